import type { Point } from '#base/geometry/point.ts';
import { anchorsOf, mapAnchors } from '#pattern/anchors.ts';
import type { Anchor, Area, Mark, Pattern, Pin, Run } from '#pattern/pattern.ts';
import type { Bend } from './bend.ts';

/**
 * A drafted strip with every place bent. Where `closedAfter` is given the strip's end meets its start: places that
 * many mm farther along are the same, pins that meet become one, and runs that come back to their first pin are closed.
 */
export function curl(strip: Pattern, bend: Bend, closedAfter: number | null): Pattern {
  const { kept, idOf } = mergedPins(strip.pins, closedAfter);
  const flat = new Map(strip.pins.map((pin): [string, Point] => [pin.id, pin]));
  const anchor = (given: Anchor): Anchor =>
    'pin' in given ? { pin: idOf.get(given.pin) ?? given.pin } : bend.place(given);
  const bent = (mark: Mark): Mark => {
    const moved = mapAnchors(mark, anchor);
    return moved.kind === 'text' && mark.kind === 'text'
      ? { ...moved, height: mark.height * bend.growth(flatPlace(flat, mark.at)) }
      : moved;
  };
  const { repeat: _, ...rest } = strip;
  const runs = strip.runs.map((run) => bentRun(run, flat, idOf, closedAfter));
  const closing = runs.flatMap((run, k) => closingLine(run, strip.runs[k]!, strip.marks));
  return {
    ...rest,
    pins: kept.map((pin) => ({ ...pin, ...bend.place(pin) })),
    runs,
    marks: [...withoutTwins(strip.marks.map(bent), new Set(idOf.values())), ...closing],
    areas: strip.areas.map((area): Area => ({ ...area, outline: area.outline.map(anchor) })),
  };
}

/** Pins that meet when the strip is closed are one: the first of them, whose name the others take. */
function mergedPins(
  pins: readonly Pin[],
  closedAfter: number | null,
): { kept: readonly Pin[]; idOf: ReadonlyMap<string, string> } {
  const idOf = new Map<string, string>();
  if (closedAfter === null) return { kept: pins, idOf };
  const ends = new Map<string, string>();
  const kept = pins.filter((pin) => {
    const along = pin.y - closedAfter * Math.floor(pin.y / closedAfter + MEETING / closedAfter);
    const place = `${Math.round(pin.x / MEETING)}/${Math.round(along / MEETING)}`;
    const first = ends.get(place);
    if (first !== undefined) idOf.set(pin.id, first);
    else ends.set(place, pin.id);
    return first === undefined;
  });
  return { kept, idOf };
}

/** Places within this of each other, mm, are the same: far above rounding, far below any pin. */
const MEETING = 1e-6;

function bentRun(
  run: Run,
  flat: ReadonlyMap<string, Point>,
  idOf: ReadonlyMap<string, string>,
  closedAfter: number | null,
): Run {
  const pins = run.pins.map((id) => idOf.get(id) ?? id);
  const comesBack = !run.closed && pins.length > 3 && pins[0] === pins.at(-1);
  const [{ x, y }, next, last] = [0, 1, -1].map((k) => flat.get(run.pins.at(k)!)!) as [Point, Point, Point];
  const isAlong = run.pins.every((id) => Math.abs(flat.get(id)!.x - x) < MEETING);
  const isAcross = run.pins.every((id) => Math.abs(flat.get(id)!.y - y) < MEETING);
  // In every second column the end's pins do not fall on the start's, but lie one step before them.
  const goesOn =
    closedAfter !== null && run.even && isAlong && Math.abs(last.y + next.y - 2 * y - closedAfter) < MEETING;
  return {
    ...run,
    pins: comesBack ? pins.slice(0, -1) : pins,
    closed: run.closed || comesBack || goesOn,
    shape: isAcross ? run.shape : 'curve',
    // Only pins in a row round the centre grow alike.
    even: run.even && isAlong,
  };
}

/** The line from the last pin of a run on to its first, where lines run from pin to pin. */
function closingLine(run: Run, before: Run, marks: readonly Mark[]): Mark[] {
  if (!run.closed || before.closed || run.pins.length < before.pins.length) return [];
  const [from, next, last] = [run.pins[0]!, run.pins[1]!, run.pins.at(-1)!];
  const isLined = marks.some((mark) => isLineBetween(mark, from, next));
  return isLined ? [{ id: `${last}-${from}`, kind: 'line', from: { pin: last }, to: { pin: from } }] : [];
}

const isLineBetween = (mark: Mark, from: string, to: string): boolean =>
  mark.kind === 'line' &&
  'pin' in mark.from &&
  mark.from.pin === from &&
  'pin' in mark.to &&
  mark.to.pin === to;

const flatPlace = (flat: ReadonlyMap<string, Point>, anchor: Anchor): Point =>
  'pin' in anchor ? flat.get(anchor.pin)! : anchor;

/** Marks of the strip's two ends that fell on each other are one: only those at `met` pins, or at no pin, can have. */
function withoutTwins(marks: readonly Mark[], met: ReadonlySet<string>): readonly Mark[] {
  if (met.size === 0) return marks;
  const seen = new Set<string>();
  return marks.filter((mark) => {
    if (!anchorsOf(mark).some((anchor) => !('pin' in anchor) || met.has(anchor.pin))) return true;
    const key = JSON.stringify({ ...mark, id: '' });
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
