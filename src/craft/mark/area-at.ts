import { type Box, boxHolds, boxOf, growBox, heightOf, widthOf } from '#base/geometry/box.ts';
import { type Face, faceAt, facesOf } from '#base/geometry/planar/faces.ts';
import { type Net, netOf, type Step } from '#base/geometry/planar/net.ts';
import { outlineOf, withoutSpurs } from '#base/geometry/planar/outline.ts';
import type { Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Anchor } from '#pattern/pattern.ts';
import type { Bounds } from './bounds.ts';

/** The smallest part of a pattern that lines enclose round a place. */
export interface FoundArea {
  readonly outline: readonly Anchor[];
  /** In the square of the pattern's unit. */
  readonly size: number;
  /** Corners where lines cross without a pin: they stay where they are when pins are moved. */
  readonly crossings: readonly Point[];
  /** Parts inside that are left out. */
  readonly islands: number;
}

/** Why there is no area at a place: nothing is drawn, or nothing that is drawn goes all round it. */
export interface AreaTrouble {
  readonly kind: 'nothing-drawn' | 'not-enclosed';
}

/**
 * The area that bounds enclose round a place. Only what lies near is looked at, and more and more of it, until the
 * area lies wholly within: what is further off cannot cut it.
 */
export function areaAt({ places, anchors, steps }: Bounds, at: Point): Result<FoundArea, AreaTrouble> {
  const whole = boxOf(steps.flatMap((step) => step.map((place) => places[place]!)));
  const size = Math.hypot(widthOf(whole), heightOf(whole));
  if (steps.length === 0 || size === 0) return failed({ kind: 'nothing-drawn' });
  if (!boxHolds(whole, at)) return failed({ kind: 'not-enclosed' });
  let seen = 0;
  for (let reach = size * LEAST_REACH; seen < steps.length; reach *= 2) {
    const window = growBox({ left: at.x, right: at.x, top: at.y, bottom: at.y }, reach);
    const near = steps.filter(([from, to]) => boxesMeet(window, boxOf([places[from]!, places[to]!])));
    if (near.length === seen) continue;
    seen = near.length;
    const local = onlyUsed(near, places);
    const net = netOf(local.places, local.steps, size * WELD);
    const face = faceAt(facesOf(net), net.places, at);
    if (!face) continue;
    const box = boxOf(face.outer.map((corner) => net.places[corner]!));
    if (seen === steps.length || boxesNest(box, window)) {
      return done(areaOf(face, net, (corner) => anchors[local.from[corner]!]));
    }
  }
  return failed({ kind: 'not-enclosed' });
}

/** Parts of the whole pattern's size: places nearer than this are one, a little more than a file's rounding. */
const WELD = 1e-5;
const LEAST_REACH = 1e-2;

function areaOf(face: Face, { places }: Net, anchorOf: (corner: number) => Anchor | undefined): FoundArea {
  const outline = outlineOf(face, places);
  return {
    outline: outline.map((corner) => anchorOf(corner) ?? places[corner]!),
    size: face.area,
    crossings: [...new Set(outline)].filter((corner) => !anchorOf(corner)).map((corner) => places[corner]!),
    islands: face.holes.filter((hole) => withoutSpurs(hole).length > 0).length,
  };
}

/** The steps with their places numbered anew, and where each place came from. */
function onlyUsed(steps: readonly Step[], places: readonly Point[]) {
  const from = [...new Set(steps.flat())].sort((one, other) => one - other);
  const to = new Map(from.map((place, index) => [place, index]));
  return {
    from,
    places: from.map((place) => places[place]!),
    steps: steps.map(([start, end]): Step => [to.get(start)!, to.get(end)!]),
  };
}

const boxesMeet = (one: Box, other: Box): boolean =>
  one.left <= other.right && other.left <= one.right && one.top <= other.bottom && other.top <= one.bottom;

const boxesNest = (inner: Box, outer: Box): boolean =>
  inner.left > outer.left &&
  inner.right < outer.right &&
  inner.top > outer.top &&
  inner.bottom < outer.bottom;
