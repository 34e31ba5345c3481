import type { Point } from '#base/geometry/point.ts';
import { defaultLookOptions, type LookOptions } from '#craft/look/options.ts';
import type { Inspection } from '#craft/look/survey.ts';
import type { Pattern, Pin } from '#pattern/pattern.ts';
import type { Regularity } from '#pattern/structure.ts';

/** A strip of ground at 45 degrees, 5 mm from footside pin to footside pin: nothing in it to find fault with. */
export const strip: readonly Point[] = Array.from({ length: 16 }, (_, row) =>
  Array.from({ length: 6 }, (_, column) => ({ x: 20 + 5 * column + 2.5 * (row % 2), y: 20 + 2.5 * row })),
).flat();

/** Pins evenly along a straight line down the sheet. */
export const line: readonly Point[] = Array.from({ length: 12 }, (_, at) => ({ x: 30, y: 20 + 4 * at }));

export const pinsAt = (places: readonly Point[]): Pin[] =>
  places.map(({ x, y }, at) => ({ id: `p${at + 1}`, x, y }));

/** The places with one of them moved. */
export const moved = (places: readonly Point[], index: number, by: Point): Point[] =>
  places.map((place, at) => (at === index ? { x: place.x + by.x, y: place.y + by.y } : place));

export const without = (places: readonly Point[], index: number): Point[] =>
  places.filter((_, at) => at !== index);

/** A pattern with nothing amiss but what the parts bring in, and no regularity but what is handed in. */
export function inspection(
  parts: Partial<Pattern>,
  regularity: Partial<Regularity> = {},
  options: Partial<LookOptions> = {},
): Inspection {
  const pattern: Pattern = {
    unit: 'mm',
    about: { maker: 'an invented maker', permission: 'for tests' },
    pins: pinsAt(strip),
    runs: [],
    marks: [],
    areas: [],
    sizes: {},
    sheet: { width: 210, height: 297 },
    scale: { from: 'drafted' },
    ...parts,
  };
  return {
    pattern,
    regularity: {
      structures: [],
      structureOf: pattern.pins.map(() => null),
      places: pattern.pins.map(({ x, y }) => ({ x, y })),
      missing: [],
      stray: [],
      ...regularity,
    },
    options: { ...defaultLookOptions, ...options },
  };
}

/** What each rule's file in `cases/` says: where the rule speaks, where it only just does not, and what mends it. */
export interface RuleCase {
  readonly name: string;
  readonly fires: Inspection;
  /** How many findings the rule makes of it; 1 where absent. */
  readonly findings?: number;
  /** Almost the same, and nothing wrong with it. */
  readonly nearMiss: Inspection;
  /** The same after the small change that the sentence asks for. */
  readonly mended: Inspection;
}
