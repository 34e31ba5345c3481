import type { Box } from '#base/geometry/box.ts';
import { mmPerPixel } from '#base/units/length.ts';
import type { PaperSize } from '#base/units/paper.ts';
import { layerNames, layerOf, layers } from '../drawing/layer.ts';
import type { Image, InkMark, Text } from '../drawing/mark.ts';
import { type OutlineContext, outline, pathOutline } from '../drawing/outline.ts';
import { type Path, rectangle } from '../drawing/path.ts';
import { letterPath } from '../type/letter-path.ts';
import type { Typeface } from '../type/typeface.ts';
import { base64 } from './base64.ts';
import { escaped } from './escaped.ts';
import { encodePng } from './png.ts';

/** A sheet to write: its paper as it lies, its title, and what is on it. */
export interface SvgPage {
  readonly paper: PaperSize;
  readonly title: string;
  readonly marks: readonly InkMark[];
}

/**
 * One sheet as SVG 1.1: its size in mm, and a view box in which one unit is 1 mm. Letters become outlines, so that
 * the sheet looks the same where the fonts are not installed.
 */
export function writeSvg(page: SvgPage, typeface: Typeface): string {
  const { width, height } = page.paper;
  return document(page, typeface, `${mm(width)}mm`, `${mm(height)}mm`, page.paper);
}

/**
 * The same sheet for a program that makes pixels of it: its size in pixels at `dpi`, with exactly as many pixels a mm
 * on both axes, so that the last row and column may reach a fraction of a pixel beyond the paper.
 */
export function writeSvgForPixels(page: SvgPage, typeface: Typeface, dpi: number): string {
  const pixels = (length: number): number => Math.max(1, Math.round(length / mmPerPixel(dpi)));
  const [width, height] = [pixels(page.paper.width), pixels(page.paper.height)];
  const view = { width: width * mmPerPixel(dpi), height: height * mmPerPixel(dpi) };
  return document(page, typeface, `${width}`, `${height}`, view);
}

function document(
  { title, marks }: SvgPage,
  typeface: Typeface,
  width: string,
  height: string,
  view: { readonly width: number; readonly height: number },
): string {
  const box = [view.width, view.height].map((length) => decimal(length, 6)).join(' ');
  const body = layers.flatMap((layer) => {
    const inLayer = marks.filter((mark) => layerOf(mark.role) === layer);
    if (inLayer.length === 0) return [];
    return [
      `<g id="${layer}"><title>${escaped(layerNames[layer])}</title>`,
      ...writeMarks(inLayer, layer, typeface),
      '</g>',
    ];
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}" height="${height}" viewBox="0 0 ${box}">`,
    `<title>${escaped(title)}</title>`,
    '<rect width="100%" height="100%" fill="#ffffff"/>',
    ...body,
    '</svg>',
    '',
  ].join('\n');
}

function writeMarks(marks: readonly InkMark[], layer: string, typeface: Typeface): string[] {
  const lines: string[] = [];
  let clip: Box | undefined;
  let clips = 0;
  for (const mark of marks) {
    if (mark.clip !== clip) {
      if (clip) lines.push('</g>');
      if (mark.clip) {
        const id = `${layer}-clip-${clips++}`;
        lines.push(
          `<clipPath id="${id}"><path d="${pathData(boxMark(mark.clip))}"/></clipPath><g clip-path="url(#${id})">`,
        );
      }
      clip = mark.clip;
    }
    lines.push(element(mark, typeface));
  }
  if (clip) lines.push('</g>');
  return lines;
}

function element(mark: InkMark, typeface: Typeface): string {
  switch (mark.kind) {
    case 'disc':
      return `<circle cx="${mm(mark.at.x)}" cy="${mm(mark.at.y)}" r="${mm(mark.diameter / 2)}" fill="${mark.colour}"/>`;
    case 'ring': {
      const radius = mm((mark.diameter - mark.width) / 2);
      return `<circle cx="${mm(mark.at.x)}" cy="${mm(mark.at.y)}" r="${radius}" ${pen(mark)}/>`;
    }
    case 'cross':
      return `<path d="${pathData(mark)}" ${pen(mark)}/>`;
    case 'stroke': {
      const dash = mark.dash ? ` stroke-dasharray="${mark.dash.map(mm).join(' ')}"` : '';
      return `<path d="${pathData(mark)}" ${pen(mark)}${dash}/>`;
    }
    case 'fill':
      return `<path d="${pathData(mark)}" fill="${mark.colour}" fill-rule="evenodd"/>`;
    case 'text':
      return textElement(mark, typeface);
    case 'image':
      return imageElement(mark);
  }
}

const pen = ({ colour, width }: { colour: string; width: number }): string =>
  `fill="none" stroke="${colour}" stroke-width="${mm(width)}" stroke-linecap="round" stroke-linejoin="round"`;

const boxMark = (box: Box): InkMark => ({
  kind: 'fill',
  role: 'guide',
  path: rectangle(box),
  colour: '#000000',
});

const textElement = (text: Text, typeface: Typeface): string =>
  `<path aria-label="${escaped(text.text)}" d="${letterData(letterPath(text, typeface))}" fill="${text.colour}"/>`;

function letterData(path: Path): string {
  const context = new PathDataContext();
  pathOutline(path, context);
  return context.data;
}

/** SVG lays the first pixel's outer corner at the picture's origin; ours is that pixel's centre. */
function imageElement({ picture, place: { a, b, c, d, e, f } }: Image): string {
  const { width, height } = picture;
  const href =
    picture.form === 'jpeg'
      ? `data:image/jpeg;base64,${base64(picture.bytes)}`
      : `data:image/png;base64,${base64(encodePng(picture))}`;
  const matrix = [a, b, c, d, e - (a + c) / 2, f - (b + d) / 2].map((value) => decimal(value, 8)).join(' ');
  return `<image width="${width}" height="${height}" preserveAspectRatio="none" transform="matrix(${matrix})" xlink:href="${href}"/>`;
}

function pathData(mark: InkMark): string {
  const context = new PathDataContext();
  outline(mark, context);
  return context.data;
}

class PathDataContext implements OutlineContext {
  data = '';

  move(x: number, y: number): void {
    this.data += `M${mm(x)} ${mm(y)}`;
  }

  line(x: number, y: number): void {
    this.data += `L${mm(x)} ${mm(y)}`;
  }

  curve(...places: [number, number, number, number, number, number]): void {
    this.data += `C${places.map(mm).join(' ')}`;
  }

  circle(x: number, y: number, radius: number): void {
    const r = mm(radius);
    this.data += `M${mm(x - radius)} ${mm(y)}A${r} ${r} 0 1 0 ${mm(x + radius)} ${mm(y)}A${r} ${r} 0 1 0 ${mm(x - radius)} ${mm(y)}Z`;
  }

  close(): void {
    this.data += 'Z';
  }
}

/** Ten-thousandths of a millimetre, never with an exponent. */
const mm = (value: number): string => decimal(value, 4);

const decimal = (value: number, digits: number): string =>
  value
    .toFixed(digits)
    .replace(/\.?0+$/, '')
    .replace(/^-0$/, '0');
