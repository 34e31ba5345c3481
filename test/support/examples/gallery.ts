import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { noFilm } from '#base/colour/film.ts';
import { translation } from '#base/geometry/affine.ts';
import { growBox, heightOf, widthOf } from '#base/geometry/box.ts';
import { MM_PER_INCH } from '#base/units/length.ts';
import { openFonts } from '#cli/files/fonts.ts';
import { moveMark } from '#paper/drawing/move.ts';
import { drawPattern } from '#paper/ink/pattern-ink.ts';
import { writeSvgForPixels } from '#paper/svg/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { drafted } from './drafted.ts';

/** Pixels across and down that a picture of the gallery may take. */
const ROOM = { width: 900, height: 620 };
const MARGIN = 3;

/** Writes a picture of every pattern of the library into the given folder. */
export async function makeGallery(folder: string): Promise<void> {
  for (const { entry, pattern } of drafted()) {
    writeFileSync(join(folder, `gallery-${entry.name}.png`), await pictureOf(pattern));
  }
}

async function pictureOf(pattern: Pattern): Promise<Uint8Array> {
  const typeface = openFonts();
  const style = {
    typeface,
    hole: { mark: 'dot', diameter: 0.7 },
    spread: 0,
    film: noFilm,
    line: 0.15,
  } as const;
  const { tints, markings, holes, box } = drawPattern(pattern, style);
  const { left, top, ...frame } = growBox(box, MARGIN);
  const map = translation(-left, -top);
  const paper = {
    name: 'picture',
    width: widthOf({ left, top, ...frame }),
    height: heightOf({ left, top, ...frame }),
  };
  const marks = [...tints, ...markings, ...holes].map((mark) => moveMark(mark, map));
  // A long strip is shown lying on its side, where there is more room.
  const lies = paper.height > paper.width * 1.5;
  const [across, down] = lies ? [paper.height, paper.width] : [paper.width, paper.height];
  const dpi = MM_PER_INCH * Math.min(ROOM.width / across, ROOM.height / down, 12);
  const svg = writeSvgForPixels({ paper, title: pattern.about.name ?? '', marks }, typeface, dpi);
  return sharp(Buffer.from(svg))
    .rotate(lies ? -90 : 0)
    .flatten({ background: '#ffffff' })
    .png({ palette: true, colours: 64 })
    .toBuffer();
}
