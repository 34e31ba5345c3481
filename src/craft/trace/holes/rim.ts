import type { GreyPicture } from '#base/picture/grey.ts';
import { RAYS, STEPS, sampleRays } from './rays.ts';
import { fitCircle } from './rim-circle.ts';
import { findEdges, seeThrough, weighFacing } from './rim-edges.ts';
import { bareOf, coreOf, marksOf } from './rim-levels.ts';

/** What lies round a candidate, as seen along rays from its fitted centre. Lengths are pixels. */
export interface Rim {
  readonly column: number;
  readonly row: number;
  /** Of the circle fitted to the free rays. */
  readonly radius: number;
  /** For each ray, where the dark ends; NaN where it does not end within reach. */
  readonly edge: Float64Array;
  /** For each ray, 1 where bare ground follows the edge, else 0: a line or another mark runs on. */
  readonly free: Uint8Array;
  /** For each ray, 1 where it is free and its edge lies on the circle. */
  readonly fits: Uint8Array;
  /** For each ray, 1 where it is dark at 1.7 expected radii, else 0. */
  readonly dark: Uint8Array;
  /** Grey of the middle, of the bare ground round it, and of the marks that touch it (NaN without any). */
  readonly core: number;
  readonly ground: number;
  readonly marks: number;
}

export function readRim(
  picture: GreyPicture,
  start: { column: number; row: number },
  expected: number,
  ground: number,
  depth: number,
): Rim {
  const samples = new Float32Array(RAYS * STEPS);
  const edge = new Float64Array(RAYS);
  const free = new Uint8Array(RAYS);
  const fits = new Uint8Array(RAYS);
  const dark = new Uint8Array(RAYS);
  const facing = new Float64Array(RAYS);
  let { column, row } = start;
  let radius = expected;
  let core = ground - depth;
  let bare = ground;
  for (let round = 0; round < 4; round++) {
    sampleRays(picture, column, row, expected, samples);
    core = coreOf(samples);
    bare = bareOf(samples, edge, round > 0 ? free : null, expected, ground);
    findEdges(samples, core, bare, expected, edge, free, dark);
    weighFacing(edge, free, facing);
    seeThrough(samples, core, bare, expected, edge, free, facing);
    const fit = fitCircle(edge, facing, free, expected, fits, round);
    const limit = 0.5 * expected;
    column += Math.max(-limit, Math.min(limit, fit.x));
    row += Math.max(-limit, Math.min(limit, fit.y));
    radius = fit.radius;
    if (round > 0 && Math.abs(fit.x) + Math.abs(fit.y) < SETTLED * expected) break;
  }
  return {
    column,
    row,
    radius,
    edge,
    free,
    fits,
    dark,
    core,
    ground: bare,
    marks: marksOf(samples, dark),
  };
}

/** A centre that moves less than this many expected radii has settled. */
const SETTLED = 0.03;
