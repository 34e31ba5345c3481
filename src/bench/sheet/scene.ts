import { type Box, boxOf, emptyBox, growBox, isEmptyBox, joinBoxes } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import { drawMarking, type MarkingStyle } from '#paper/ink/markings.ts';
import { areaInk, GIMP_COLOUR } from '#paper/ink/pattern-ink.ts';
import { allPlaces, type PlaceOf, placesOf } from '#paper/ink/places.ts';
import { wantedTint } from '#paper/ink/tints.ts';
import { LEAST_LETTER } from '#paper/type/style.ts';
import { anchorsOf } from '#pattern/anchors.ts';
import type { Anchor, Area, Mark, Pattern, Pin } from '#pattern/pattern.ts';
import { screenLetters } from './screen-letters.ts';

/**
 * One marking or tint, and what it is drawn from. Its places, its box and its ink are found when they are first asked
 * for, so that a large pattern opens at once.
 */
export class SceneItem {
  readonly record: Mark | Area;
  readonly #placeOf: PlaceOf;
  #places: readonly (Point | undefined)[] | null = null;
  #box: Box | null = null;
  #ink: readonly InkMark[] | null = null;

  constructor(record: Mark | Area, placeOf: PlaceOf) {
    this.record = record;
    this.#placeOf = placeOf;
  }

  /** Holds all of its ink, and some air. */
  get box(): Box {
    this.#box ??= growBox(
      boxOf(this.#placesNow().filter((place) => place !== undefined)),
      airOf(this.record),
    );
    return this.#box;
  }

  get ink(): readonly InkMark[] {
    const { record } = this;
    this.#ink ??= 'kind' in record ? inkOfMark(record, this.#placeOf) : inkOfArea(record, this.#placeOf);
    return this.#ink;
  }

  /** Whether all that it is drawn from lies where it lay. */
  stillServes(placeOf: PlaceOf): boolean {
    if (placeOf === this.#placeOf) return true;
    const places = this.#placesNow();
    return this.#anchors().every((anchor, index) => placeOf(anchor) === places[index]);
  }

  #anchors(): readonly Anchor[] {
    return 'kind' in this.record ? anchorsOf(this.record) : this.record.outline;
  }

  #placesNow(): readonly (Point | undefined)[] {
    this.#places ??= this.#anchors().map(this.#placeOf);
    return this.#places;
  }
}

/** What the sheet draws of a pattern: made once, then brought up to date with as little work as the edit calls for. */
export interface Scene {
  readonly pattern: Pattern;
  readonly placeOf: PlaceOf;
  readonly areas: readonly SceneItem[];
  readonly marks: readonly SceneItem[];
  /** The marks as they are painted: thick gimps first, so that fine lines stay on top of them. */
  readonly painted: readonly SceneItem[];
}

/** The scene of a pattern. Whatever is drawn from the same records as in the scene before is taken from there. */
export function sceneOf(pattern: Pattern, before: Scene | null): Scene {
  const placeOf = before?.pattern.pins === pattern.pins ? before.placeOf : placesOf(pattern);
  const marks = itemsOf(pattern.marks, before?.marks ?? [], placeOf);
  return {
    pattern,
    placeOf,
    areas: itemsOf(pattern.areas, before?.areas ?? [], placeOf),
    marks,
    painted: [...marks.filter(isGimp), ...marks.filter((one) => !isGimp(one))],
  };
}

const isGimp = ({ record }: SceneItem): boolean => 'kind' in record && record.kind === 'gimp';

function itemsOf(
  records: readonly (Mark | Area)[],
  before: readonly SceneItem[],
  placeOf: PlaceOf,
): readonly SceneItem[] {
  let known: ReadonlyMap<Mark | Area, SceneItem> | null = null;
  const oldOf = (record: Mark | Area, index: number): SceneItem | undefined => {
    const same = before[index];
    if (same?.record === record) return same;
    known ??= new Map(before.map((item) => [item.record, item]));
    return known.get(record);
  };
  return records.map((record, index) => {
    const old = oldOf(record, index);
    return old?.stillServes(placeOf) ? old : new SceneItem(record, placeOf);
  });
}

/** Things that differ are told apart one by one up to so many; of more, no place is left as it was. */
const MOST_DIFFERENCES = 1000;

const everywhere: Box = { left: -Infinity, top: -Infinity, right: Infinity, bottom: Infinity };

/** Where two scenes differ: a box without bounds where they do so in very much, null where they do so nowhere. */
export function differenceBox(one: Scene, other: Scene): Box | null {
  let box = emptyBox;
  let count = 0;
  const join = (each: Box): void => {
    count += 1;
    if (!isEmptyBox(each)) box = joinBoxes(box, each);
  };
  for (const pin of differing(one.pattern.pins, other.pattern.pins)) {
    join(boxOfPin(pin));
    if (count > MOST_DIFFERENCES) return everywhere;
  }
  for (const list of ['areas', 'marks'] as const) {
    for (const item of differing(one[list], other[list])) {
      join(item.box);
      if (count > MOST_DIFFERENCES) return everywhere;
    }
  }
  return isEmptyBox(box) ? null : box;
}

/** What is in only one of two lists. In lists of one length, what stands in another place counts too. */
function* differing<Thing>(from: readonly Thing[], to: readonly Thing[]): Generator<Thing> {
  if (from === to) return;
  if (from.length === to.length) {
    for (let at = 0; at < from.length; at++) {
      if (from[at] !== to[at]) yield* [from[at]!, to[at]!];
    }
    return;
  }
  const [some, others] = withoutSameEnds(from, to);
  const [before, after] = [new Set(some), new Set(others)];
  for (const thing of some) if (!after.has(thing)) yield thing;
  for (const thing of others) if (!before.has(thing)) yield thing;
}

/** What is left of two lists without what they have in common from the beginning and from the end. */
function withoutSameEnds<Thing>(from: readonly Thing[], to: readonly Thing[]): [Thing[], Thing[]] {
  const shorter = Math.min(from.length, to.length);
  let head = 0;
  while (head < shorter && from[head] === to[head]) head++;
  let tail = 0;
  while (tail < shorter - head && from.at(-1 - tail) === to.at(-1 - tail)) tail++;
  return [from.slice(head, from.length - tail), to.slice(head, to.length - tail)];
}

const boxOfPin = ({ x, y, diameter }: Pin): Box =>
  growBox({ left: x, right: x, top: y, bottom: y }, Math.max(diameter ?? 0, USUAL_DOT));

export const meets = (one: Box, other: Box): boolean =>
  one.left <= other.right && one.right >= other.left && one.top <= other.bottom && one.bottom >= other.top;

/** Diameter at which a dot is shown where the pattern gives none, in the pattern's unit. */
export const USUAL_DOT = 0.6;

/** How far ink may reach beyond the anchors: heads of arrows, the swing of a curve, the length of words. */
export function airOf(record: Mark | Area): number {
  if (!('kind' in record)) return 1;
  if (record.kind === 'line') return 1;
  if (record.kind === 'text') return Math.max(LEAST_LETTER, record.height) * (record.text.length + 2);
  return 12 + (record.kind === 'arrow' ? LEAST_LETTER * (record.label?.length ?? 0) : 0);
}

function inkOfArea(area: Area, placeOf: PlaceOf): readonly InkMark[] {
  const corners = allPlaces(area.outline, placeOf);
  return corners ? areaInk(corners, wantedTint(area)) : [];
}

/** All ink of a mark as the sheet shows it. */
export function inkOfMark(mark: Mark, placeOf: PlaceOf): readonly InkMark[] {
  const drawn = drawMarking(mark, placeOf, sceneStyle());
  return drawn ? [...drawn.ink, ...drawn.words] : [];
}

let madeStyle: MarkingStyle | null = null;

function sceneStyle(): MarkingStyle {
  madeStyle ??= {
    typeface: screenLetters(),
    line: 0.15,
    colour: '#20242c',
    gimp: GIMP_COLOUR,
    clearOfHole: USUAL_DOT / 2 + 0.1,
  };
  return madeStyle;
}
