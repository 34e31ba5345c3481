import { compose } from '#base/geometry/affine.ts';
import { mmToPoints } from '#base/units/length.ts';
import type { PaperSize } from '#base/units/paper.ts';
import { correctMarks } from '../calibrate/apply.ts';
import { noCorrection, type PrinterCorrection } from '../calibrate/correction.ts';
import { layerNames, layerOf, layers } from '../drawing/layer.ts';
import type { Image, InkMark, Text } from '../drawing/mark.ts';
import { textStart } from '../drawing/outline.ts';
import type { Typeface } from '../type/typeface.ts';
import { ContentWriter, decimal, points } from './content.ts';
import { type PdfAttachment, PdfDocument, type PdfMeta } from './document.ts';

/** A page to write: its paper as it lies, and what is on it. */
export interface PdfPage {
  readonly paper: PaperSize;
  readonly marks: readonly InkMark[];
}

export interface PdfOptions {
  readonly typeface: Typeface;
  readonly meta: PdfMeta;
  readonly attachments?: readonly PdfAttachment[];
  /** What the printer needs so that its print is true; of all files only the PDF is corrected. */
  readonly correction?: PrinterCorrection;
}

/** The pages as one PDF, true to scale, in layers. The same pages and options give the same bytes. */
export async function writePdf(pages: readonly PdfPage[], options: PdfOptions): Promise<Uint8Array> {
  const pdf = new PdfDocument(options.meta, options.typeface.files);
  for (const page of pages) {
    const marks = correctMarks(page.marks, page.paper, options.correction ?? noCorrection);
    pdf.addPage(mmToPoints(page.paper.width), mmToPoints(page.paper.height));
    for (const layer of layers) {
      const inLayer = marks.filter((mark) => layerOf(mark.role) === layer);
      if (inLayer.length === 0) continue;
      pdf.beginLayer(layerNames[layer]);
      writeMarks(pdf, inLayer, options.typeface);
      pdf.endLayer();
    }
  }
  for (const attachment of options.attachments ?? []) pdf.attach(attachment);
  return pdf.finish();
}

function writeMarks(pdf: PdfDocument, marks: readonly InkMark[], typeface: Typeface): void {
  const content = new ContentWriter();
  let clip: InkMark['clip'];
  for (const mark of marks) {
    if (mark.clip !== clip) {
      if (clip) content.endClip();
      if (mark.clip) content.beginClip(mark.clip);
      clip = mark.clip;
    }
    if (mark.kind === 'text') writeText(pdf, content, mark, typeface);
    else if (mark.kind === 'image') writeImage(pdf, content, mark);
    else content.draw(mark);
  }
  if (clip) content.endClip();
  pdf.content(content.take());
}

function writeText(pdf: PdfDocument, content: ContentWriter, text: Text, typeface: Typeface): void {
  content.fillColour(text.colour);
  const start = textStart(text);
  const [cos, sin] = [Math.cos(text.turn), Math.sin(text.turn)];
  pdf.content(content.take());
  pdf.content(`q ${[cos, sin, -sin, cos].map(decimal).join(' ')} ${points(start.x)} ${points(start.y)} cm`);
  let along = 0;
  for (const run of typeface.runs(text.text, text.weight)) {
    pdf.text(run, mmToPoints(text.size), mmToPoints(along * text.size), 0);
    along += run.width;
  }
  pdf.content('Q');
}

/** PDF draws a picture in the unit square with its first row on top where y runs up. */
function writeImage(pdf: PdfDocument, content: ContentWriter, { picture, place }: Image): void {
  const { width, height } = picture;
  const square = { a: width, b: 0, c: 0, d: -height, e: -0.5, f: height - 0.5 };
  const { a, b, c, d, e, f } = compose(place, square);
  const matrix = [a, b, c, d, e, f].map(points).join(' ');
  pdf.content(content.take());
  pdf.content(`q ${matrix} cm /${pdf.picture(picture)} Do Q`);
}
