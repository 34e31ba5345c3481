import type { Progress } from '#base/progress.ts';
import { done, type Result } from '#base/result.ts';
import { densitiesIn } from '#jobs/picture/density.ts';
import { nameFromFile } from '#jobs/picture/name.ts';
import type { FileScale, PictureTrouble } from '#jobs/picture/picture.ts';
import { scaleFrom } from '#jobs/picture/scale.ts';
import { traceAgain } from '#jobs/trace/again.ts';
import { patternOnPaper } from '#jobs/trace/paper.ts';
import { chooseScale } from '#jobs/trace/scale.ts';
import type { ScaleTrouble } from '#jobs/trouble.ts';
import { BENCH } from '#jobs/words/door.ts';
import { pictureNoteInWords } from '#jobs/words/picture.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { readPicture } from './pictures/read.ts';

/** A pattern that so far is nothing but its paper, with the picture to keep. */
export interface PaperMade {
  readonly pattern: Pattern;
  readonly pictures: ReadonlyMap<string, Blob>;
  readonly notes: readonly string[];
}

/** Makes a pattern of a scan or photograph: its paper alone, at the scale that the file states. */
export async function paper(file: File, progress: Progress): Promise<Result<PaperMade, PictureTrouble>> {
  const read = await readPicture(new Uint8Array(await file.arrayBuffer()), file.name, progress);
  if (!read.ok) return read;
  const picture = read.value;
  const chosen = chooseScale(picture.scale, null);
  const pattern = patternOnPaper(picture, chosen.ok ? chosen.value : { from: 'none' });
  const name = nameFromFile(file.name);
  const { name: entry, bytes } = picture.file;
  const type = entry.endsWith('.png') ? 'image/png' : 'image/jpeg';
  return done({
    pattern: name ? { ...pattern, about: { name } } : pattern,
    pictures: new Map([[entry, new Blob([bytes as BlobPart], { type })]]),
    notes: picture.notes.map(pictureNoteInWords),
  });
}

/** What the kept picture of a paper says of its own scale. */
export const paperScale = async (picture: Blob, _progress: Progress): Promise<FileScale> =>
  scaleFrom(densitiesIn(new Uint8Array(await picture.arrayBuffer())));

/** A pattern with the pins that were found on its paper, and what to know about them. */
export interface PinsFound {
  readonly pattern: Pattern;
  readonly notes: readonly string[];
}

/** Finds the pins on the paper of a pattern. */
export async function trace(
  pattern: Pattern,
  picture: Blob,
  progress: Progress,
): Promise<Result<PinsFound, PictureTrouble | ScaleTrouble>> {
  const read = await readPicture(new Uint8Array(await picture.arrayBuffer()), null, progress);
  if (!read.ok) return read;
  const traced = traceAgain(pattern, read.value, progress, BENCH);
  if (!traced.ok) return traced;
  return done({ pattern: traced.value.pattern, notes: traced.value.notes });
}
