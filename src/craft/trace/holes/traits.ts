import { RAYS } from './rays.ts';
import type { Rim } from './rim.ts';

/** What tells a dot from other marks; lengths in page dot radii, so that they mean the same at any size. */
export interface Traits {
  /** Radius against the page's. */
  readonly size: number;
  /** Root mean square distance of the free edges from the circle. */
  readonly scatter: number;
  /** How far free edges fall short of the page's dots, on average: a dot fills its circle, a crossing does not. */
  readonly inset: number;
  /** How many marks run into it. */
  readonly lines: number;
  /** Width of the widest of them. */
  readonly widest: number;
  /** How far the rim stands out over what those marks alone would fill, averaged over all rays. */
  readonly bulge: number;
  /** Share of rays where it stands out clearly. */
  readonly stands: number;
  /** 0 where the fitting rays lie all round, 1 where all lie to one side. */
  readonly lean: number;
  /** Darkness of the middle, in the local contrast. */
  readonly depth: number;
  /** How much darker the middle is than the marks that touch it; 0 without any. */
  readonly over: number;
  /** How near the edges lie to the circle, from 0 to 1 for every ray on it, blocked rays counting 0. */
  readonly close: number;
}

export function traitsOf(rim: Rim, expected: number, contrast: number): Traits {
  const alone = linesAlone(rim);
  let round = 0;
  let free = 0;
  let squares = 0;
  let inset = 0;
  let bulge = 0;
  let stands = 0;
  let close = 0;
  let leanX = 0;
  let leanY = 0;
  for (let ray = 0; ray < RAYS; ray++) {
    if (!rim.free[ray]) continue;
    free++;
    const off = (rim.edge[ray]! - rim.radius) / expected;
    squares += off * off;
    inset += Math.max(0, FULL - rim.edge[ray]! / expected);
    if (!rim.fits[ray]) continue;
    round++;
    close += Math.exp(-((off / 0.1) ** 2));
    const out = Math.min(1, rim.edge[ray]! / expected - alone.reach[ray]!);
    bulge += Math.max(0, out);
    if (out > 0.25) stands++;
    leanX += Math.cos((2 * Math.PI * ray) / RAYS);
    leanY += Math.sin((2 * Math.PI * ray) / RAYS);
  }
  const ink = Math.max(1, rim.ground - rim.core);
  return {
    size: rim.radius / expected,
    scatter: free ? Math.sqrt(squares / free) : 1,
    inset: inset / Math.max(FEW, free),
    lines: alone.lines,
    widest: alone.widest,
    bulge: bulge / RAYS,
    stands: stands / RAYS,
    lean: round ? Math.hypot(leanX, leanY) / round : 1,
    depth: (rim.ground - rim.core) / contrast,
    over: Number.isNaN(rim.marks) ? 0 : (rim.marks - rim.core) / ink,
    close: close / RAYS,
  };
}

/** Edges this far out, in expected radii, belong to a full dot: sizes differ, and edges are rough. */
const FULL = 0.8;
/** Fewer free rays than this say little. */
const FEW = 6;
/** Where, in expected radii, the dark rays are looked at. */
const FAR = 1.7;
/** An arc of dark rays wider than this many radians is a broad mark that passes by, not a line that runs in. */
const BROAD = 1.7;

/**
 * How far from the centre, along each ray, the marks seen at a distance would alone make ink. A line that runs in
 * is a straight strip to the centre: at an angle `turn` off a strip of half width h that is `h / sin(turn)`.
 * A broad mark that passes by has a straight edge, the chord of its arc.
 */
function linesAlone(rim: Rim): { reach: Float64Array; lines: number; widest: number } {
  const reach = new Float64Array(RAYS);
  let lines = 0;
  let widest = 0;
  const start = rim.dark.indexOf(0);
  if (start < 0) return { reach: reach.fill(2), lines: 1, widest: 2 * FAR };
  for (let step = 1; step <= RAYS; step++) {
    const first = (start + step) % RAYS;
    if (!rim.dark[first]) continue;
    let length = 1;
    while (rim.dark[(first + length) % RAYS]) length++;
    step += length;
    lines++;
    const middle = first + (length - 1) / 2;
    const halfAngle = (Math.PI * length) / RAYS;
    const half = FAR * Math.sin(Math.min(Math.PI / 2, halfAngle));
    widest = Math.max(widest, 2 * half);
    for (let ray = 0; ray < RAYS; ray++) {
      const turn = Math.abs(
        (((2 * Math.PI * (ray - middle)) / RAYS + 3 * Math.PI) % (2 * Math.PI)) - Math.PI,
      );
      const out = 2 * halfAngle > BROAD ? pastEdge(turn, FAR * Math.cos(halfAngle)) : alongStrip(turn, half);
      reach[ray] = Math.max(reach[ray]!, out);
    }
  }
  return { reach, lines, widest };
}

/** Ink begins at a straight edge `distance` ahead (behind the centre where negative): all of it, or none. */
function pastEdge(turn: number, distance: number): number {
  const ahead = Math.cos(turn);
  if (distance >= 0) return ahead > 0 && distance / ahead < 1 ? 2 : 0;
  return ahead >= 0 ? 2 : distance / ahead;
}

/** Past a quarter turn only the blunt end of the strip is left. */
const alongStrip = (turn: number, half: number): number =>
  turn > Math.PI / 2 ? 0.8 * half : half / Math.max(Math.sin(turn), half / 2);
