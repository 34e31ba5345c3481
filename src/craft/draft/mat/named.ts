import { mapAnchors } from '#pattern/anchors.ts';
import type { Anchor, Pattern } from '#pattern/pattern.ts';

/** The same pattern with `prefix` before every id. */
export function named(pattern: Pattern, prefix: string): Pattern {
  const anchor = (given: Anchor): Anchor => ('pin' in given ? { pin: prefix + given.pin } : given);
  return {
    ...pattern,
    pins: pattern.pins.map((pin) => ({ ...pin, id: prefix + pin.id })),
    runs: pattern.runs.map((run) => ({
      ...run,
      id: prefix + run.id,
      pins: run.pins.map((pin) => prefix + pin),
    })),
    marks: pattern.marks.map((mark) => ({ ...mapAnchors(mark, anchor), id: prefix + mark.id })),
    areas: pattern.areas.map((area) => ({
      ...area,
      id: prefix + area.id,
      outline: area.outline.map(anchor),
    })),
  };
}
