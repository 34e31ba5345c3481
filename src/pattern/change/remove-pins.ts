import { anchorPoint, anchorsOf, mapAnchors } from '../anchors.ts';
import type { Anchor, Area, Mark, Pattern, Run } from '../pattern.ts';
import { pinsById } from '../pins.ts';
import { changeBetween } from './between.ts';
import type { Change } from './change.ts';

/**
 * The whole change by which pins go, with what it means for all that speaks of them, so that nothing a person drew
 * is lost: marks and areas stay where they are drawn, with a place of their own instead of the pin; runs close up,
 * and go where fewer than two pins are left; the pin's place on the paper is forgotten.
 * Throws where the pattern has no such pin.
 */
export function removePins(pattern: Pattern, ids: Iterable<string>): Change {
  const gone = new Set(ids);
  const pins = pinsById(pattern);
  for (const id of gone) if (!pins.has(id)) throw new RangeError(`removePins: no pin "${id}"`);

  const isGone = (anchor: Anchor): boolean => 'pin' in anchor && gone.has(anchor.pin);
  const free = (anchor: Anchor): Anchor => (isGone(anchor) ? anchorPoint(pins, anchor) : anchor);
  const closeUp = (run: Run): Run =>
    run.pins.some((id) => gone.has(id)) ? { ...run, pins: run.pins.filter((id) => !gone.has(id)) } : run;
  const freeMark = (mark: Mark): Mark => (anchorsOf(mark).some(isGone) ? mapAnchors(mark, free) : mark);
  const freeArea = (area: Area): Area =>
    area.outline.some(isGone) ? { ...area, outline: area.outline.map(free) } : area;

  return changeBetween(pattern, {
    ...pattern,
    pins: pattern.pins.filter(({ id }) => !gone.has(id)),
    runs: pattern.runs.map(closeUp).filter((run) => run.pins.length >= 2),
    marks: pattern.marks.map(freeMark),
    areas: pattern.areas.map(freeArea),
    ...(pattern.paper && { paper: forget(pattern.paper, gone) }),
  });
}

function forget(paper: NonNullable<Pattern['paper']>, gone: ReadonlySet<string>): typeof paper {
  if (!paper.stood) return paper;
  return { ...paper, stood: Object.fromEntries(Object.entries(paper.stood).filter(([id]) => !gone.has(id))) };
}
