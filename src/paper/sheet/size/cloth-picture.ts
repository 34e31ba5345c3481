import { type Box, growBox } from '#base/geometry/box.ts';
import type { Colour, InkMark } from '../../drawing/mark.ts';
import { rectangle } from '../../drawing/path.ts';
import { hairline, LEAST_LINE } from '../../type/style.ts';

/** Threads side by side: how far apart their middles are, and how thick each of them is; mm of the lace. */
export interface ThreadSet {
  readonly apart: number;
  readonly diameter: number;
}

/** Cloth stitch as the geometry of its threads gives it: passives run down, workers across. */
export interface Cloth {
  readonly passives: ThreadSet;
  readonly workers: ThreadSet;
}

/**
 * A patch of cloth stitch, `times` as large as it will be, light on dark as on a pillow. Where threads are drawn large
 * enough to be told apart they go over and under each other in turn, as cloth stitch does.
 */
export function clothPicture(cloth: Cloth, box: Box, times: number): InkMark[] {
  const passives = bandsIn(cloth.passives, box.left, box.right, times);
  const workers = bandsIn(cloth.workers, box.top, box.bottom, times);
  const large = Math.min(cloth.passives.diameter, cloth.workers.diameter) * times >= LARGE;
  const down = (band: Band): Box => ({ ...box, left: band.from, right: band.to });
  const across = (band: Band): Box => ({ ...box, top: band.from, bottom: band.to });
  const draw = large ? rounded : flat;
  const over = large
    ? workers.flatMap((worker, j) =>
        passives.flatMap((passive, i) => ((i + j) % 2 ? [] : crossing(worker, passive, box))),
      )
    : [];
  return [
    fill(box, GROUND),
    ...workers.flatMap((band) => draw(across(band), 'across')),
    ...passives.flatMap((band) => draw(down(band), 'down')),
    ...over,
    {
      kind: 'stroke',
      role: 'note',
      path: rectangle(growBox(box, -LEAST_LINE / 2)),
      width: LEAST_LINE,
      colour: hairline,
    },
  ];
}

const GROUND: Colour = '#33414a';
const THREAD: Colour = '#f7f1e5';
const SHADE: Colour = '#a8987c';

/** Threads wider than this on paper are drawn with their edges, mm. */
const LARGE = 0.8;

/** How much of a thread's width is its shaded edge, on either side. */
const EDGE = 0.14;

interface Band {
  readonly from: number;
  readonly to: number;
}

/** The threads of one set inside a stretch, cut off at its ends, the middle one in its middle. */
function bandsIn({ apart, diameter }: ThreadSet, from: number, to: number, times: number): Band[] {
  const [step, half, middle] = [apart * times, (diameter * times) / 2, (from + to) / 2];
  const most = Math.ceil((to - from) / 2 / step) + 1;
  return Array.from({ length: 2 * most + 1 }, (_, k) => middle + (k - most) * step)
    .map((at) => ({ from: Math.max(from, at - half), to: Math.min(to, at + half) }))
    .filter((band) => band.to > band.from);
}

type Way = 'across' | 'down';

const flat = (box: Box, _way: Way): InkMark[] => [fill(box, THREAD)];

function rounded(box: Box, way: Way): InkMark[] {
  const edge = EDGE * (way === 'down' ? box.right - box.left : box.bottom - box.top);
  const inner =
    way === 'down'
      ? { ...box, left: box.left + edge, right: box.right - edge }
      : { ...box, top: box.top + edge, bottom: box.bottom - edge };
  return [fill(box, SHADE), fill(inner, THREAD)];
}

/** The piece of a worker that lies over a passive. */
function crossing(worker: Band, passive: Band, box: Box): InkMark[] {
  const reach = 0.1 * (passive.to - passive.from);
  return rounded(
    {
      left: Math.max(box.left, passive.from - reach),
      right: Math.min(box.right, passive.to + reach),
      top: worker.from,
      bottom: worker.to,
    },
    'across',
  );
}

const fill = (box: Box, colour: Colour): InkMark => ({
  kind: 'fill',
  role: 'note',
  path: rectangle(box),
  colour,
});

/** So large that about ten passives are seen in the coarsest of some cloths on a picture so wide, in whole times. */
export function enlargement(cloths: readonly Cloth[], width: number): number {
  const widest = Math.max(...cloths.map(({ passives }) => passives.apart));
  return Math.min(20, Math.max(2, Math.round(width / (10 * widest))));
}
