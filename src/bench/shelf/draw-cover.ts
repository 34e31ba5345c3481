import { type Box, heightOf, widthOf } from '#base/geometry/box.ts';
import { cameraOn } from '../sheet/camera.ts';
import { paint } from '../sheet/paint.ts';
import { PaperUnder } from '../sheet/paper-under.ts';
import { sceneOf } from '../sheet/scene.ts';
import { wholeSheet } from '../sheet/whole-sheet.ts';
import type { Cover } from '../store/database.ts';
import type { StoredDesign } from '../store/designs.ts';
import { keptFile } from '../store/kept-file.ts';

/** Size of the picture, CSS pixels, and how many pixels each of them has. */
const VIEW = { width: 240, height: 180 };
const RATIO = 2;

/** Milliseconds of drawing between two looks at what else the page has to do. */
const BUDGET = 6;

/** A pattern longer than so many times its width is shown by its beginning, or nothing of it could be seen. */
const LONGEST = 3;

/** Draws the small picture of a design, a few milliseconds at a time. */
export async function drawCover({ card, pattern, pictures }: StoredDesign): Promise<Cover> {
  const canvas = new OffscreenCanvas(VIEW.width * RATIO, VIEW.height * RATIO);
  const brush = canvas.getContext('2d', { alpha: false, willReadFrequently: true })!;
  const file = pattern.paper && pattern.pins.length === 0 ? pictures.get(pattern.paper.entry) : undefined;
  // The paper is shown only where there is nothing else: with pins on it, it would be a grey blot.
  const paper = file
    ? await PaperUnder.open(file, pattern.paper!, VIEW.width * RATIO).catch(() => null)
    : null;
  const box = beginningOf(wholeSheet(pattern));
  const painting = {
    ...{ scene: sceneOf(pattern, null), camera: cameraOn(box, VIEW), view: VIEW, ratio: RATIO },
    ...{ paper, paperShare: 1, markings: true },
  };
  let until = performance.now() + BUDGET;
  for (const _ of paint(brush, painting, boxSeen(painting.camera))) {
    if (performance.now() < until) continue;
    await new Promise((resolve) => setTimeout(resolve));
    until = performance.now() + BUDGET;
  }
  paper?.close();
  const { maker, lace } = pattern.about;
  return {
    revision: card.revision,
    picture: await keptFile(await canvas.convertToBlob({ type: 'image/png' })),
    ...(maker !== undefined && { maker }),
    ...(lace !== undefined && { lace }),
  };
}

function beginningOf(box: Box): Box {
  const [width, height] = [widthOf(box), heightOf(box)];
  if (width > LONGEST * height && height > 0) return { ...box, right: box.left + LONGEST * height };
  if (height > LONGEST * width && width > 0) return { ...box, bottom: box.top + LONGEST * width };
  return box;
}

const boxSeen = ({ centre, scale }: ReturnType<typeof cameraOn>): Box => ({
  left: centre.x - VIEW.width / 2 / scale,
  right: centre.x + VIEW.width / 2 / scale,
  top: centre.y - VIEW.height / 2 / scale,
  bottom: centre.y + VIEW.height / 2 / scale,
});
