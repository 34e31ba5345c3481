import type { Affine } from '#base/geometry/affine.ts';
import type { Progress } from '#base/progress.ts';
import { done, type Result } from '#base/result.ts';
import type { Judgement } from '#craft/light/judgement.ts';
import { checkCard } from '#jobs/light/light.ts';
import { photoOnSheet } from '#jobs/light/on-sheet.ts';
import type { PictureTrouble } from '#jobs/picture/picture.ts';
import type { CheckTrouble } from '#jobs/trouble.ts';
import { lightNoteInWords } from '#jobs/words/light.ts';
import { pictureNoteInWords } from '#jobs/words/picture.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { MapWish } from './make/check-map.ts';
import { readPicture } from './pictures/read.ts';

export interface CardChecked {
  readonly judgement: Judgement;
  /** What to know beside the verdicts, in words. */
  readonly notes: readonly string[];
  /** The photo as it lies on the sheet. */
  readonly photo: {
    readonly bitmap: ImageBitmap;
    readonly width: number;
    readonly height: number;
    readonly toPattern: Affine;
  };
}

export const lightJobs = {
  /** Checks a photo of a pricked card against its pattern. */
  checkCard: async (
    pattern: Pattern,
    file: File,
    cardThickness: number | null,
    progress: Progress,
  ): Promise<Result<CardChecked, PictureTrouble | CheckTrouble>> => {
    const read = await readPicture(new Uint8Array(await file.arrayBuffer()), file.name, progress);
    if (!read.ok) return read;
    const checked = checkCard(pattern, read.value, cardThickness, progress);
    if (!checked.ok) return checked;
    const judgement = checked.value;
    const { picture, toPattern } = photoOnSheet(pattern.pins, read.value, judgement, progress);
    const { width, height } = picture;
    const bitmap = await createImageBitmap(new ImageData(inColour(picture.bytes), width, height));
    const notes = [...read.value.notes.map(pictureNoteInWords), ...judgement.notes.map(lightNoteInWords)];
    return done({ judgement, notes, photo: { bitmap, width, height, toPattern } });
  },
  /** The photo with the verdicts on it, and the map true to scale to prick again by. */
  checkMap: async (
    pattern: Pattern,
    file: File,
    judgement: Judgement,
    wish: MapWish,
    progress: Progress,
  ): Promise<Result<Uint8Array, PictureTrouble>> => {
    const read = await readPicture(new Uint8Array(await file.arrayBuffer()), file.name, progress);
    if (!read.ok) return read;
    // Letters and PDF are large: they are loaded where a map is wanted.
    const { checkPdf } = await import('./make/check-map.ts');
    return done(await checkPdf(pattern, read.value, judgement, wish));
  },
};

function inColour(grey: Uint8Array): Uint8ClampedArray<ArrayBuffer> {
  const colour = new Uint8ClampedArray(grey.length * 4);
  for (let k = 0; k < grey.length; k++) colour.fill(grey[k]!, 4 * k, 4 * k + 3);
  for (let k = 3; k < colour.length; k += 4) colour[k] = 255;
  return colour;
}
