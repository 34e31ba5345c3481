import { zlibSync } from 'fflate';
import PDFDocument, { type Reference } from 'pdfkit';
import type { Picture } from '../drawing/mark.ts';
import type { Face, FaceRun, FontFiles } from '../type/typeface.ts';

/** What a PDF says about itself. The date is printed only where one is given, so that equal input gives equal bytes. */
export interface PdfMeta {
  readonly title: string;
  readonly author?: string;
  readonly subject?: string;
  readonly date?: Date;
}

/** A file carried inside the PDF. */
export interface PdfAttachment {
  readonly name: string;
  readonly type: string;
  readonly description: string;
  readonly bytes: Uint8Array;
}

/**
 * The one place that knows pdfkit, and the private parts of it that layers, print settings and exact pages need.
 * Lengths are points, y down.
 */
export class PdfDocument {
  readonly #pdf: PDFDocument;
  readonly #chunks: Uint8Array[] = [];
  readonly #ended: Promise<void>;
  readonly #layers = new Map<string, Reference>();
  readonly #pictures = new Map<Picture, { readonly name: string; readonly object: Reference }>();

  constructor(meta: PdfMeta, fonts: FontFiles) {
    const info = {
      Title: meta.title,
      Producer: 'Pinlight',
      Creator: 'Pinlight',
      ...(meta.author ? { Author: meta.author } : {}),
      ...(meta.subject ? { Subject: meta.subject } : {}),
    };
    this.#pdf = new PDFDocument({
      autoFirstPage: false,
      pdfVersion: '1.7',
      compress: true,
      displayTitle: true,
      font: null,
      info: { ...info, CreationDate: meta.date ?? new Date(0) },
    });
    const ref = this.#pdf.ref.bind(this.#pdf);
    this.#pdf.ref = (data) => pressedAlike(ref(data));
    // pdfkit needs some date to make its file identifier; one that nobody gave must not be printed.
    if (!meta.date) delete this.#pdf.info.CreationDate;
    // pdfkit would copy the title into its XML metadata unescaped; the same facts stand in the Info dictionary.
    this.#pdf.endMetadata = () => {};
    this.#ended = new Promise((resolve, reject) => {
      this.#pdf.on('data', (chunk) => this.#chunks.push(chunk));
      this.#pdf.on('end', resolve);
      this.#pdf.on('error', reject);
    });
    for (const face of Object.keys(fonts) as Face[]) this.#pdf.registerFont(face, fonts[face]);
    this.#askForTrueScale();
  }

  addPage(width: number, height: number): void {
    this.#pdf.addPage({ size: [width, height], margin: 0 });
    delete this.#pdf.page.dictionary.data.UserUnit;
  }

  content(operators: string): void {
    if (operators) this.#pdf.addContent(operators);
  }

  text(run: FaceRun, size: number, x: number, y: number): void {
    this.#pdf.font(run.face).fontSize(size);
    this.#pdf.text(run.text, x, y, { lineBreak: false, baseline: 'alphabetic' });
  }

  /** Begins a layer that a reader can show and hide; `endLayer` ends it. */
  beginLayer(name: string): void {
    let group = this.#layers.get(name);
    if (!group) {
      group = this.#pdf.ref({ Type: 'OCG', Name: words(name) });
      this.#layers.set(name, group);
    }
    const key = `Layer${[...this.#layers.keys()].indexOf(name)}`;
    const resources = this.#pdf.page.resources.data;
    resources.Properties = { ...(resources.Properties as object | undefined), [key]: group };
    this.content(`/OC /${key} BDC`);
  }

  endLayer(): void {
    this.content('EMC');
  }

  /** Makes the picture known to the page and gives the name by which `Do` draws it in the unit square. */
  picture(picture: Picture): string {
    let known = this.#pictures.get(picture);
    if (!known) {
      known = { name: `Picture${this.#pictures.size}`, object: this.#embed(picture) };
      this.#pictures.set(picture, known);
    }
    this.#pdf.page.xobjects[known.name] = known.object;
    return known.name;
  }

  attach({ bytes, ...about }: PdfAttachment): void {
    this.#pdf.file(bytes, about);
  }

  async finish(): Promise<Uint8Array> {
    this.#declareLayers();
    this.#pdf.end();
    await this.#ended;
    return joined(this.#chunks);
  }

  /** ISO 32000-1, table 150: no scaling in the print dialogue, the tray that fits the page, one side only. */
  #askForTrueScale(): void {
    Object.assign((this.#pdf._root.data.ViewerPreferences as Reference).data, {
      PrintScaling: 'None',
      Enforce: ['PrintScaling'],
      PickTrayByPDFSize: true,
      Duplex: 'Simplex',
    });
  }

  #declareLayers(): void {
    if (this.#layers.size === 0) return;
    const groups = [...this.#layers.values()];
    for (const group of groups) group.end();
    this.#pdf._root.data.OCProperties = {
      OCGs: groups,
      D: { Name: words('Layers'), Order: groups, ON: groups },
    };
  }

  #embed({ form, width, height, channels, bytes }: Picture): Reference {
    const object = this.#pdf.ref({
      Type: 'XObject',
      Subtype: 'Image',
      Width: width,
      Height: height,
      ColorSpace: channels === 1 ? 'DeviceGray' : 'DeviceRGB',
      BitsPerComponent: 8,
      ...(form === 'jpeg' ? { Filter: 'DCTDecode' } : {}),
    });
    object.end(bytes);
    return object;
  }
}

/**
 * pdfkit presses streams with whatever zlib the machine has, and with another one in browsers: each gives other bytes.
 * They are pressed here instead, so that the same pattern gives the same file everywhere.
 */
function pressedAlike(reference: Reference): Reference {
  const finalize = reference.finalize.bind(reference);
  reference.finalize = () => {
    if (reference.compress && reference.buffer.length > 0) {
      reference.buffer = [zlibSync(joined(reference.buffer))];
      reference.compress = false;
    }
    finalize();
  };
  return reference;
}

/** pdfkit writes plain strings as PDF names and String objects as text. */
const words = (text: string): unknown => Object(text);

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
