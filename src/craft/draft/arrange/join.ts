import { PointIndex } from '#base/geometry/point-index.ts';
import { done, failed, type Result } from '#base/result.ts';
import { mapAnchors } from '#pattern/anchors.ts';
import { MAX_PINS } from '#pattern/file/limits.ts';
import type { Anchor, Area, Mark, Pattern, Pin } from '#pattern/pattern.ts';
import { Ids } from './ids.ts';
import { joinRuns } from './join-runs.ts';
import { JOIN_WITHIN, type PinNames, prefixOf } from './names.ts';
import type { ArrangeTrouble } from './trouble.ts';

/**
 * Parts laid together as one pattern. A pin that stands on a pin of an earlier part (within 0.01 mm) is that pin;
 * runs that meet at such a pin go on as one; marks and areas that say the same of the same pins are kept once. Ids of
 * the first part stay; those of part k get `b`, k + 1 and a point before them: `b2.g3.4`. What the pattern says of
 * itself (about, sizes, scale, sheet, paper, repeat) is the first part's.
 */
export function joinPatterns(parts: readonly Pattern[]): Result<Pattern, ArrangeTrouble> {
  const [first] = parts;
  if (!first) throw new RangeError('joinPatterns: no patterns');
  if (parts.some(({ unit }) => unit !== first.unit)) return failed({ kind: 'units-differ' });
  const given = parts.reduce((sum, { pins }) => sum + pins.length, 0);
  if (given > MAX_PINS) return failed({ kind: 'too-many-pins', given, most: MAX_PINS });

  const { pins, idsOf } = joinedPins(parts);
  const { recipe: _, ...kept } = first;
  return done({
    ...kept,
    pins,
    runs: joinRuns(parts, idsOf, new Map(pins.map((pin) => [pin.id, pin]))),
    marks: joinedMarks(parts, idsOf),
    areas: joinedAreas(parts, idsOf),
  });
}

function joinedPins(parts: readonly Pattern[]): { readonly pins: Pin[]; readonly idsOf: PinNames } {
  const places = parts.flatMap(({ pins }) => pins);
  const partOf = Uint32Array.from(parts.flatMap(({ pins }, part) => pins.map(() => part)));
  const index = new PointIndex(places);
  const ids = new Ids();
  const nameAt: string[] = [];
  const pins: Pin[] = [];
  const idsOf = parts.map(() => new Map<string, string>());
  places.forEach((pin, at) => {
    const part = partOf[at]!;
    const hosts = part === 0 ? [] : index.within(pin, JOIN_WITHIN).filter((other) => partOf[other]! < part);
    const host = hosts.length === 0 ? null : Math.min(...hosts);
    const name = host === null ? ids.give(prefixOf(part) + pin.id) : nameAt[host]!;
    if (host === null) pins.push({ ...pin, id: name });
    nameAt.push(name);
    idsOf[part]!.set(pin.id, name);
  });
  return { pins, idsOf };
}

const renamed =
  (names: ReadonlyMap<string, string>) =>
  (anchor: Anchor): Anchor =>
    'pin' in anchor ? { pin: names.get(anchor.pin)! } : anchor;

function joinedMarks(parts: readonly Pattern[], idsOf: PinNames): Mark[] {
  const ids = new Ids();
  const seen = new Seen();
  return parts.flatMap(({ marks }, part) =>
    marks.flatMap((mark) => {
      const named = mapAnchors(mark, renamed(idsOf[part]!));
      if (seen.before(part, saysOfMark(named))) return [];
      return { ...named, id: ids.give(prefixOf(part) + mark.id) };
    }),
  );
}

function joinedAreas(parts: readonly Pattern[], idsOf: PinNames): Area[] {
  const ids = new Ids();
  const seen = new Seen();
  return parts.flatMap(({ areas }, part) =>
    areas.flatMap((area) => {
      const outline = area.outline.map(renamed(idsOf[part]!));
      if (seen.before(part, JSON.stringify(outline.map((anchor) => JSON.stringify(anchor)).sort())))
        return [];
      return { ...area, outline, id: ids.give(prefixOf(part) + area.id) };
    }),
  );
}

/** What a mark says, whichever way round a line is drawn. */
function saysOfMark({ id: _, ...mark }: Mark): string {
  if (mark.kind !== 'line') return JSON.stringify(mark);
  return JSON.stringify(['line', ...[mark.from, mark.to].map((end) => JSON.stringify(end)).sort()]);
}

/** Remembers what earlier parts said; a part may say a thing twice itself, as it did before it was joined. */
class Seen {
  readonly #by = new Map<string, number>();

  before(part: number, says: string): boolean {
    const by = this.#by.get(says);
    if (by === undefined) this.#by.set(says, part);
    return by !== undefined && by < part;
  }
}
