import { add, distance, type Point, scale } from '#base/geometry/point.ts';
import { type Random, seededRandom } from '#base/random.ts';
import { PatternBuilder } from './builder.ts';
import { beside, evenly, inside, lengthOf, nearness, sample } from './curve.ts';
import type { KnownPattern } from './known.ts';

export interface FineOptions {
  /** Footside spacing, mm. */
  readonly spacing?: number;
  /** Angle of the ground to the footside, degrees. */
  readonly angle?: number;
  readonly repeats?: number;
  /** Width from the footside to the middle of the headside, mm. */
  readonly width?: number;
  /** Length of a repeat in footside spacings. */
  readonly length?: number;
  /** Width of the gimp, mm. */
  readonly gimp?: number;
  /** How far the gimp's middle lies outside the outline pins, mm; small values drown some pins. */
  readonly gimpOffset?: number;
  /** Share of a repeat whose ground lines are drawn. */
  readonly groundLines?: number;
  readonly tint?: string;
  readonly seed?: number;
}

/**
 * A fine piece on a point ground: flowers and leaves whose closed outlines cross the ground with a clearance, with
 * fillings or cloth stitch inside and a gimp round them, a straight footside, and a curved headside with picots.
 */
export function fine(options: FineOptions = {}): KnownPattern {
  const { spacing = 2.6, angle = 58, repeats = 2, width = 36, length = 18, seed = 1 } = options;
  const { gimp = 0.8, gimpOffset = 0.6, groundLines = 0.2, tint } = options;
  const random = seededRandom(seed);
  const build = new PatternBuilder();
  const rowStep = spacing / 2;
  const columnStep = rowStep * Math.tan((angle * Math.PI) / 180);
  const period = length * spacing;
  const total = period * repeats;
  const clearance = 0.42 * spacing;

  const headAt = (y: number): Point => ({
    x: width + 0.09 * width * Math.cos((2 * Math.PI * y) / period),
    y,
  });
  const head = sample(headAt, 0, total);
  const motifs = oneRepeat(width, period, random);
  const outlines = Array.from({ length: repeats }, (_, k) =>
    motifs.map((motif) => ({
      ...motif,
      outline: motif.outline.map((point) => add(point, { x: 0, y: k * period })),
    })),
  ).flat();

  const nodes = new Map<string, number>();
  for (let j = 0; j <= 2 * length * repeats; j++) {
    for (let i = j % 2; ; i += 2) {
      const place = { x: i * columnStep, y: j * rowStep };
      if (place.x > headAt(place.y).x - clearance - 0.4 * spacing) break;
      const clear = outlines.every(
        ({ outline }) => !inside(outline, place) && nearness(outline, place) > clearance + gimpOffset,
      );
      if (clear) nodes.set(`${i} ${j}`, build.pin(place, i === 0 ? 'foot' : 'ground'));
    }
  }
  const column = [...nodes].filter(([key]) => key.startsWith('0 ')).map(([, pin]) => pin);
  build.run(column, 'footside');
  for (const [key, pin] of nodes) {
    const [i, j] = key.split(' ').map(Number) as [number, number];
    if ((j % (2 * length)) / (2 * length) >= groundLines) continue;
    for (const side of [-1, 1]) {
      const below = nodes.get(`${i + side} ${j + 1}`);
      if (below !== undefined) build.line(pin, below);
    }
  }

  const headCount = Math.round(lengthOf(head) / (0.95 * spacing)) + 1;
  const headPins = evenly(head, headCount, false);
  build.run(
    headPins.map((point) => build.pin(point, 'head')),
    'headside',
  );
  evenly(beside(head, 0.55 * spacing), Math.round(headCount * 0.7), false).forEach((point) => {
    build.picot(build.pin(point, 'picot'));
  });

  for (const { outline, filling } of outlines) {
    const count = Math.round(lengthOf(outline) / (0.72 * spacing));
    const pins = evenly(outline, count, true).map((point) => build.pin(point, 'outline'));
    build.run(pins, 'outline', { closed: true, drawn: false });
    build.gimp(
      beside(outline, gimpOffset, true)
        .slice(0, -1)
        .filter((_, k) => k % 8 === 0),
      true,
      gimp,
    );
    const anchors = pins.map((pin) => build.at(pin));
    if (filling === 'cloth') build.area(anchors, 'cloth', tint);
    if (filling === 'open') fillWithPins(build, outline, spacing);
  }
  return build.finish('Flower piece', 'point ground', { step: { x: 0, y: period }, count: repeats });
}

interface Motif {
  /** Closed, ending where it starts, with its outside to the left. */
  readonly outline: readonly Point[];
  readonly filling: 'cloth' | 'open' | 'none';
}

/** One flower of petals round an eye, and two leaves under it; no two outlines cross. */
function oneRepeat(width: number, period: number, random: Random): Motif[] {
  const centre = { x: 0.52 * width, y: 0.42 * period };
  const size = Math.min(0.36 * width, 0.3 * period);
  const petals = 5 + Math.floor(3 * random());
  const turn = random() * Math.PI;
  const motifs: Motif[] = [{ outline: blob(centre, 0.23 * size, 0.23 * size, 0, 0), filling: 'cloth' }];
  const reach = 0.66 * size;
  const half = Math.min(0.36 * size, reach * Math.sin(Math.PI / petals) - 0.09 * size);
  for (let k = 0; k < petals; k++) {
    const angle = turn + (2 * Math.PI * k) / petals;
    const middle = add(centre, { x: reach * Math.cos(angle), y: reach * Math.sin(angle) });
    const filling = (['open', 'cloth', 'none'] as const)[Math.floor(3 * random())]!;
    motifs.push({ outline: blob(middle, 0.27 * size, half, angle, 0.12), filling });
  }
  for (const side of [-1, 1]) {
    const middle = add(centre, scale({ x: side * 0.62, y: 1.25 }, size));
    motifs.push({
      outline: blob(middle, 0.4 * size, 0.17 * size, side * (0.5 + 0.3 * random()), 0.1),
      filling: 'cloth',
    });
  }
  return motifs;
}

/** An egg: an ellipse of half axes `along` and `across`, broader by `egg` toward its outer end, turned by `angle`. */
function blob(middle: Point, along: number, across: number, angle: number, egg: number): Point[] {
  return sample(
    (t) => {
      const u = along * Math.cos(t);
      const v = across * Math.sin(t) * (1 + egg * Math.cos(t));
      return {
        x: middle.x + u * Math.cos(angle) - v * Math.sin(angle),
        y: middle.y + u * Math.sin(angle) + v * Math.cos(angle),
      };
    },
    0,
    2 * Math.PI,
    320,
  );
}

/** A coarser net of its own inside an outline, well clear of the outline's pins. */
function fillWithPins(build: PatternBuilder, outline: readonly Point[], spacing: number): void {
  const middle = scale(outline.reduce(add), 1 / outline.length);
  const reach = Math.max(...outline.map((point) => distance(point, middle)));
  const step = 0.75 * spacing;
  const count = Math.ceil(reach / step);
  for (let j = -count; j <= count; j++) {
    for (let i = -count; i <= count; i++) {
      if ((i + j) % 2 !== 0) continue;
      const place = add(middle, { x: i * step, y: j * step });
      if (inside(outline, place) && nearness(outline, place) > 0.6 * spacing) build.pin(place, 'fill');
    }
  }
}
