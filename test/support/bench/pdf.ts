import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { pointsToMm } from '#base/units/length.ts';

/** A page as another program reads it: its size and where its dots stand, mm from the top left. */
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly text: string;
  readonly dots: readonly { readonly x: number; readonly y: number }[];
}

export interface ReadPdf {
  readonly scaling: unknown;
  readonly pages: readonly ReadPage[];
  readonly attachments: readonly string[];
}

/** Reads a PDF with pdf.js. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const preferences = (await document.getViewerPreferences()) as { PrintScaling?: unknown } | null;
  const attachments = Object.keys(((await document.getAttachments()) as object | null) ?? {});
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { fnArray, argsArray } = await page.getOperatorList();
    const { items } = await page.getTextContent();
    // A dot is drawn as one shape that is only moved to its place; letters are moved too, but draw no path.
    const dots = [...fnArray.keys()].flatMap((k) => {
      if (fnArray[k] !== OPS.transform || fnArray[k + 1] !== OPS.constructPath) return [];
      const [a, b, c, d, x, y] = argsArray[k] as number[];
      return `${[a, b, c, d]}` === '1,0,0,1' ? [{ x: pointsToMm(x!), y: pointsToMm(y!) }] : [];
    });
    const [, , width, height] = page.view;
    const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
    pages.push({ width: pointsToMm(width!), height: pointsToMm(height!), text, dots });
  }
  return { scaling: preferences?.PrintScaling, pages, attachments };
}
