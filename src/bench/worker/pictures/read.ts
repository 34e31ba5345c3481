import { type Progress, silent } from '#base/progress.ts';
import { done, failed, type Result } from '#base/result.ts';
import { densitiesIn } from '#jobs/picture/density.ts';
import { notesOn, turned } from '#jobs/picture/notes.ts';
import type { FileScale, PictureFile, PictureIn, PictureTrouble } from '#jobs/picture/picture.ts';
import { scaleFrom } from '#jobs/picture/scale.ts';
import { type Decoded, decode } from './decode.ts';
import { writeGrey } from './grey.ts';
import { stating } from './stating.ts';
import { UprightPicture } from './upright.ts';
import { pixelsAreWithheld } from './withheld.ts';

/**
 * Decodes a JPEG, PNG, TIFF or WebP file to grey pixels, upright by its EXIF orientation, 8 bits deep, with
 * transparent parts on white paper. Of several pages or frames the first is read, and a note says so.
 */
export async function readPicture(
  bytes: Uint8Array,
  name: string | null = null,
  progress: Progress = silent,
): Promise<Result<PictureIn, PictureTrouble>> {
  progress('read', 0);
  if (pixelsAreWithheld()) return failed({ kind: 'pixels-withheld' });
  const decoded = await decode(bytes);
  if (!decoded.ok) return decoded;
  const { format, headers, bitmap } = decoded.value;
  const picture = new UprightPicture(bitmap, headers.orientation);
  const { width, height } = picture;
  const grey = new Uint8Array(width * height);
  for (const { top, rows, rgba } of picture.strips()) {
    writeGrey(grey, top * width, rgba);
    progress('read', (top + rows) / height);
  }
  const scale = turned(scaleFrom(densitiesIn(bytes)), headers.orientation >= 5);
  const file = await fileToKeep(bytes, decoded.value, picture, scale);
  picture.close();
  return done({ width, height, grey, scale, notes: notesOn(format, name, headers.pages), file });
}

/**
 * The picture as it is kept with the pattern: the file itself where every viewer shows it as we read it, else a
 * JPEG of the same pixels.
 */
async function fileToKeep(
  bytes: Uint8Array,
  { format, headers }: Decoded,
  picture: UprightPicture,
  scale: FileScale,
): Promise<PictureFile> {
  const isPlain = headers.orientation === 1 && headers.plain;
  if (isPlain && format === 'jpeg') return { name: 'paper.jpg', bytes };
  if (isPlain && format === 'png') return { name: 'paper.png', bytes };
  return { name: 'paper.jpg', bytes: stating(scale, await picture.toJpeg()) };
}
