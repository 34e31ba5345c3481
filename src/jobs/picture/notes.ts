import type { PictureFormat } from './kind.ts';
import type { FileScale, PictureNote } from './picture.ts';

/** The formats as people write them. */
export const FORMAT_NAMES: Readonly<Record<PictureFormat, string>> = {
  jpeg: 'JPEG',
  png: 'PNG',
  tiff: 'TIFF',
  webp: 'WebP',
};

const ENDINGS: Readonly<Record<PictureFormat, RegExp>> = {
  jpeg: /\.(jpe?g|jpe|jfif)$/i,
  png: /\.png$/i,
  tiff: /\.tiff?$/i,
  webp: /\.webp$/i,
};

/** What to know about a picture of so many pages or frames, in a file of that name. */
export function notesOn(format: PictureFormat, name: string | null, pages: number): PictureNote[] {
  const notes: PictureNote[] = [];
  if (pages > 1) notes.push({ kind: 'first-page-only', pages });
  const lies =
    name !== null && Object.entries(ENDINGS).some(([other, ending]) => other !== format && ending.test(name));
  if (lies) notes.push({ kind: 'named-otherwise', is: FORMAT_NAMES[format] });
  return notes;
}

/** What the file says across is down once a picture is laid on its side. */
export const turned = (scale: FileScale, onItsSide: boolean): FileScale =>
  onItsSide && scale.kind === 'unequal' ? { kind: 'unequal', across: scale.down, down: scale.across } : scale;
