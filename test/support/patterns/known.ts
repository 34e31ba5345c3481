import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import type { Point } from '#base/geometry/point.ts';
import { normal, type Random } from '#base/random.ts';
import type { Anchor, Area, Mark, Pattern } from '#pattern/pattern.ts';

/** What a pin is for in a generated pattern. */
export type Role =
  | 'ground'
  | 'foot'
  | 'head'
  | 'fan'
  | 'outline'
  | 'fill'
  | 'edge'
  | 'picot'
  | 'plait'
  | 'spider'
  | 'centre';

/**
 * A pattern of our own invention whose truth is known: where each pin stands, where it ought to stand, and what it
 * is for. `ideal` and `roles` go by the index of the pin in `pattern.pins`.
 */
export interface KnownPattern {
  readonly pattern: Pattern;
  readonly roles: readonly Role[];
  readonly ideal: readonly Point[];
  /** Pins that ought to be there and are not. */
  readonly omitted: readonly { readonly place: Point; readonly role: Role }[];
}

/** The pattern as an unsteady hand pricks it: every pin off its place by `sigma` mm (in x and in y). */
export function jitter(known: KnownPattern, sigma: number, random: Random): KnownPattern {
  const pins = known.pattern.pins.map((pin) => ({
    ...pin,
    x: pin.x + sigma * normal(random),
    y: pin.y + sigma * normal(random),
  }));
  return { ...known, pattern: { ...known.pattern, pins } };
}

/** The pattern with the pins at `indices` left out; what was anchored to them keeps its place. */
export function omit(known: KnownPattern, indices: readonly number[]): KnownPattern {
  const gone = new Map(indices.map((index) => [known.pattern.pins[index]!.id, known.pattern.pins[index]!]));
  const stays = (_: unknown, index: number): boolean => !indices.includes(index);
  const free = (anchor: Anchor): Anchor => {
    const pin = 'pin' in anchor ? gone.get(anchor.pin) : undefined;
    return pin ? { x: pin.x, y: pin.y } : anchor;
  };
  return {
    pattern: {
      ...known.pattern,
      pins: known.pattern.pins.filter(stays),
      runs: known.pattern.runs.map((run) => ({ ...run, pins: run.pins.filter((id) => !gone.has(id)) })),
      ...mapAnchors(known.pattern, free),
    },
    roles: known.roles.filter(stays),
    ideal: known.ideal.filter(stays),
    omitted: [
      ...known.omitted,
      ...indices.map((index) => ({ place: known.ideal[index]!, role: known.roles[index]! })),
    ],
  };
}

/** What a copier did to the pattern (skew, unequal scale, shear): the pins move, the truth does not. */
export function distort(known: KnownPattern, map: Affine): KnownPattern {
  const moved = (anchor: Anchor): Anchor => ('pin' in anchor ? anchor : applyAffine(map, anchor));
  const pins = known.pattern.pins.map((pin) => ({ ...pin, ...applyAffine(map, pin) }));
  return { ...known, pattern: { ...known.pattern, pins, ...mapAnchors(known.pattern, moved) } };
}

/** The same pattern laid elsewhere or at another angle: pins and truth move together. */
export function place(known: KnownPattern, map: Affine): KnownPattern {
  return {
    ...distort(known, map),
    ideal: known.ideal.map((point) => applyAffine(map, point)),
    omitted: known.omitted.map((pin) => ({ ...pin, place: applyAffine(map, pin.place) })),
  };
}

/** `count` different pin indices, drawn by chance from those whose role `may` be left out. */
export function drawPins(
  known: KnownPattern,
  count: number,
  random: Random,
  may: (role: Role) => boolean = () => true,
): number[] {
  const pool = known.roles.flatMap((role, index) => (may(role) ? [index] : []));
  const drawn: number[] = [];
  while (drawn.length < count && pool.length > 0) {
    drawn.push(...pool.splice(Math.floor(random() * pool.length), 1));
  }
  return drawn;
}

function mapAnchors(pattern: Pattern, map: (anchor: Anchor) => Anchor): Pick<Pattern, 'marks' | 'areas'> {
  const marks = pattern.marks.map((mark): Mark => {
    switch (mark.kind) {
      case 'line':
      case 'arrow':
        return { ...mark, from: map(mark.from), to: map(mark.to) };
      case 'gimp':
      case 'plait':
        return { ...mark, path: mark.path.map(map) };
      default:
        return { ...mark, at: map(mark.at) };
    }
  });
  const areas = pattern.areas.map((area): Area => ({ ...area, outline: area.outline.map(map) }));
  return { marks, areas };
}
