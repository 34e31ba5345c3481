import { type Box, boxOf, emptyBox, growBox, isEmptyBox, joinBoxes } from '#base/geometry/box.ts';
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
 * One marking or tint, with the records that it is drawn from. Its ink is made when it is first painted, so that a
 * large pattern opens at once.
 */
export class SceneItem {
  readonly record: Mark | Area;
  readonly pins: readonly (Pin | undefined)[];
  /** Holds all of its ink, and some air. */
  readonly box: Box;
  readonly #draw: () => readonly InkMark[];
  #ink: readonly InkMark[] | null = null;

  constructor(
    record: Mark | Area,
    pins: readonly (Pin | undefined)[],
    box: Box,
    draw: () => readonly InkMark[],
  ) {
    this.record = record;
    this.pins = pins;
    this.box = box;
    this.#draw = draw;
  }

  get ink(): readonly InkMark[] {
    this.#ink ??= this.#draw();
    return this.#ink;
  }
}

/** What the sheet draws of a pattern: made once, then brought up to date with as little work as the edit calls for. */
export interface Scene {
  readonly pattern: Pattern;
  readonly areas: readonly SceneItem[];
  /** Thick gimps first, so that fine lines stay on top of them. */
  readonly marks: readonly SceneItem[];
}

/** The scene of a pattern. Whatever is drawn from the same records as in the scene before is taken from there. */
export function sceneOf(pattern: Pattern, before: Scene | null): Scene {
  const placeOf = placesOf(pattern);
  const pinOf = (anchor: Anchor) => ('pin' in anchor ? (placeOf(anchor) as Pin | undefined) : undefined);
  const known = new Map(
    [...(before?.areas ?? []), ...(before?.marks ?? [])].map((item) => [item.record, item]),
  );
  const item = (
    record: Mark | Area,
    anchors: readonly Anchor[],
    draw: () => readonly InkMark[],
  ): SceneItem => {
    const old = known.get(record);
    if (old && anchors.every((anchor, index) => old.pins[index] === pinOf(anchor))) return old;
    const places = anchors.map(placeOf).filter((place) => place !== undefined);
    return new SceneItem(record, anchors.map(pinOf), growBox(boxOf(places), airOf(record)), draw);
  };
  const areas = pattern.areas.map((area) => item(area, area.outline, () => inkOfArea(area, placeOf)));
  const marks = pattern.marks.map((mark) => item(mark, anchorsOf(mark), () => inkOfMark(mark, placeOf)));
  const isGimp = ({ record }: SceneItem) => 'kind' in record && record.kind === 'gimp';
  return { pattern, areas, marks: [...marks.filter(isGimp), ...marks.filter((one) => !isGimp(one))] };
}

/** Where two scenes differ, or null where they do so nowhere. */
export function differenceBox(one: Scene, other: Scene): Box | null {
  const boxes: Box[] = [];
  const gather = <Thing>(from: readonly Thing[], to: readonly Thing[], boxOf: (thing: Thing) => Box) => {
    const [some, others] = withoutSameEnds(from, to);
    const [before, after] = [new Set(some), new Set(others)];
    for (const thing of some) if (!after.has(thing)) boxes.push(boxOf(thing));
    for (const thing of others) if (!before.has(thing)) boxes.push(boxOf(thing));
  };
  gather(one.pattern.pins, other.pattern.pins, boxOfPin);
  gather(one.areas, other.areas, ({ box }) => box);
  gather(one.marks, other.marks, ({ box }) => box);
  const box = boxes.filter((each) => !isEmptyBox(each)).reduce(joinBoxes, emptyBox);
  return isEmptyBox(box) ? null : box;
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
