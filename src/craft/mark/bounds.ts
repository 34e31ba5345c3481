import { boxOf, heightOf, widthOf } from '#base/geometry/box.ts';
import type { Step } from '#base/geometry/planar/net.ts';
import type { Point } from '#base/geometry/point.ts';
import { placesAlong, smoothThrough } from '#base/geometry/smooth.ts';
import { anchorPoint } from '#pattern/anchors.ts';
import type { Anchor, Mark, Pattern, Run } from '#pattern/pattern.ts';
import { pinsById } from '#pattern/pins.ts';

/**
 * What an area ends at: every line that is drawn, or only what outlines a part of the lace (gimps, plaits, the edges of
 * areas, and runs of pins along edges), passing over the working lines inside of it.
 */
export type Reach = 'lines' | 'outlines';

/** The lines of a pattern that may bound an area, as straight steps. */
export interface Bounds {
  readonly places: readonly Point[];
  /** What each place is anchored to. */
  readonly anchors: readonly Anchor[];
  readonly steps: readonly Step[];
}

export function boundsOf(pattern: Pattern, reach: Reach): Bounds {
  const gathered = new Gathered(pattern);
  for (const mark of pattern.marks) addMark(gathered, mark, reach);
  for (const { outline } of pattern.areas) gathered.add([...outline, outline[0]!]);
  for (const run of pattern.runs) {
    if (!isEdge(run)) continue;
    const pins = run.closed ? [...run.pins, run.pins[0]!] : run.pins;
    gathered.add(pins.map((pin) => ({ pin })));
  }
  return gathered;
}

const isEdge = ({ role }: Run): boolean => role !== 'centre' && role !== 'other';

function addMark(gathered: Gathered, mark: Mark, reach: Reach): void {
  if (mark.kind === 'line' && reach === 'lines') gathered.add([mark.from, mark.to]);
  else if (mark.kind === 'gimp') gathered.addCurve(mark.path, mark.closed);
  else if (mark.kind === 'plait') gathered.addCurve(mark.path, false);
}

/** How far, in parts of its own size, the steps of a curve may stray from it: less than a hair on a petal of 20 mm. */
const FLATNESS = 1e-3;

class Gathered implements Bounds {
  readonly places: Point[] = [];
  readonly anchors: Anchor[] = [];
  readonly steps: Step[] = [];
  readonly #pins: ReturnType<typeof pinsById>;
  readonly #known = new Map<string, number>();

  constructor(pattern: Pattern) {
    this.#pins = pinsById(pattern);
  }

  add(path: readonly Anchor[]): void {
    const places = path.map((anchor) => this.#placeOf(anchor));
    for (let at = 1; at < places.length; at++) this.steps.push([places[at - 1]!, places[at]!]);
  }

  /** As it is drawn: smooth through its anchors. */
  addCurve(path: readonly Anchor[], closed: boolean): void {
    const points = path.map((anchor) => anchorPoint(this.#pins, anchor));
    const box = boxOf(points);
    const off = FLATNESS * Math.hypot(widthOf(box), heightOf(box));
    const isStraight = path.length < 3 || off === 0;
    const bent = smoothThrough(points, closed).flatMap((piece, at) => [
      ...(isStraight ? [] : placesAlong(piece, off)),
      path[(at + 1) % path.length]!,
    ]);
    this.add([path[0]!, ...bent]);
  }

  #placeOf(anchor: Anchor): number {
    const known = 'pin' in anchor ? this.#known.get(anchor.pin) : undefined;
    if (known !== undefined) return known;
    const index = this.places.push(anchorPoint(this.#pins, anchor)) - 1;
    this.anchors.push('pin' in anchor ? { pin: anchor.pin } : { x: anchor.x, y: anchor.y });
    if ('pin' in anchor) this.#known.set(anchor.pin, index);
    return index;
  }
}
