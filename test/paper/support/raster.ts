import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFiumLibrary } from '@hyzyla/pdfium';
import type { GreyPicture } from '#base/picture/grey.ts';
import type { PaperSize } from '#base/units/paper.ts';

/** Independent programs that turn a page of a PDF into grey pixels. */
export type Rasteriser = 'poppler' | 'mupdf' | 'ghostscript' | 'pdfium';

export const rasterisers: readonly Rasteriser[] = ['poppler', 'mupdf', 'ghostscript', 'pdfium'];

/** Pixels, and how many mm of paper one of them covers across and down. */
export interface Seen {
  readonly picture: GreyPicture;
  readonly mm: { readonly x: number; readonly y: number };
}

/** One page, counted from 1, at `dpi`, by one of the programs. */
export async function rasterise(
  program: Rasteriser,
  pdf: Uint8Array,
  page: number,
  dpi: number,
  paper: PaperSize,
): Promise<Seen> {
  if (program === 'pdfium') {
    // This binding stretches the page to whole pixels of a size in whole points; the others crop or pad it.
    const picture = await withPdfium(pdf, page, dpi);
    return { picture, mm: { x: paper.width / picture.width, y: paper.height / picture.height } };
  }
  return inFolder((folder) => {
    const file = join(folder, 'in.pdf');
    const out = join(folder, 'out.pgm');
    writeFileSync(file, pdf);
    run(program, { file, out, page: `${page}`, dpi: `${dpi}` });
    return { picture: readPgm(new Uint8Array(readFileSync(out))), mm: { x: 25.4 / dpi, y: 25.4 / dpi } };
  });
}

/** Runs a body with a folder of its own that is gone afterwards. */
export function inFolder<Value>(body: (folder: string) => Value): Value {
  const folder = mkdtempSync(join(tmpdir(), 'pinlight-'));
  try {
    return body(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Job {
  readonly file: string;
  readonly out: string;
  readonly page: string;
  readonly dpi: string;
}

function run(program: Exclude<Rasteriser, 'pdfium'>, { file, out, page, dpi }: Job): void {
  const quiet = { stdio: ['ignore', 'ignore', 'pipe'] as ['ignore', 'ignore', 'pipe'] };
  if (program === 'poppler') {
    const base = out.slice(0, -'.pgm'.length);
    execFileSync('pdftoppm', ['-gray', '-r', dpi, '-f', page, '-l', page, '-singlefile', file, base], quiet);
  } else if (program === 'mupdf') {
    execFileSync(
      'mutool',
      ['draw', '-q', '-c', 'gray', '-r', dpi, '-F', 'pgm', '-o', out, file, page],
      quiet,
    );
  } else {
    const settings = ['-q', '-dNOPAUSE', '-dBATCH', '-dSAFER', '-dGraphicsAlphaBits=4', '-dTextAlphaBits=4'];
    const where = [`-dFirstPage=${page}`, `-dLastPage=${page}`, `-r${dpi}`, `-sOutputFile=${out}`];
    execFileSync('gs', [...settings, '-sDEVICE=pgmraw', ...where, file], quiet);
  }
}

async function withPdfium(pdf: Uint8Array, page: number, dpi: number): Promise<GreyPicture> {
  const library = await PDFiumLibrary.init();
  try {
    const document = await library.loadDocument(pdf);
    const { width, height, data } = await document.getPage(page - 1).render({
      scale: dpi / 72,
      colorSpace: 'Gray',
      render: 'bitmap',
    });
    const grey = data.slice();
    document.destroy();
    return { width, height, grey };
  } finally {
    library.destroy();
  }
}

/** Raw PGM of 8 bits: "P5", width, height, 255 and the bytes, with comments allowed in between. */
export function readPgm(bytes: Uint8Array): GreyPicture {
  const fields: string[] = [];
  let at = 0;
  while (fields.length < 4) {
    let word = '';
    while (bytes[at]! > 32) word += String.fromCharCode(bytes[at++]!);
    if (word.startsWith('#')) while (bytes[at] !== 10) at++;
    else if (word) fields.push(word);
    at++;
  }
  const [magic, width, height, most] = fields;
  if (magic !== 'P5' || most !== '255') throw new Error(`Not an 8-bit PGM: ${fields.join(' ')}`);
  return { width: Number(width), height: Number(height), grey: bytes.slice(at) };
}
