import type { Unnamed } from '#pattern/change/edit-drawn.ts';
import type { Anchor, Mark } from '#pattern/pattern.ts';
import type { CourseKind } from './wishes.ts';

/** What a further touch makes of a marking that grows. */
export type Grown =
  | { readonly at: 'grows'; readonly path: readonly Anchor[] }
  /** It is whole; `joined` where its end came back to its beginning. */
  | { readonly at: 'whole'; readonly path: readonly Anchor[]; readonly joined: boolean }
  | { readonly at: 'refused'; readonly why: string };

/** The marking after a touch of `anchor`; free places count as one where they lie within `reach` of each other. */
export function grow(kind: CourseKind, path: readonly Anchor[], anchor: Anchor, reach: number): Grown {
  const last = path.at(-1);
  if (last && isSame(last, anchor, reach)) return finish(kind, path);
  if (!('pin' in anchor) && (kind === 'line' || (kind === 'plait' && !last)))
    return { at: 'refused', why: NO_PIN[kind] };
  if ((kind === 'gimp' || kind === 'area') && path.length > 2 && isSame(path[0]!, anchor, reach)) {
    return { at: 'whole', path, joined: true };
  }
  const longer = [...path, anchor];
  if (kind === 'arrow' && longer.length === 2) return { at: 'whole', path: longer, joined: false };
  return { at: 'grows', path: longer };
}

/** The marking as it is when a person says that it is done. */
export function finish(kind: CourseKind, path: readonly Anchor[]): Grown {
  const last = path.at(-1);
  if (kind === 'area' && path.length < 3)
    return { at: 'refused', why: 'An area has three corners at least: touch the next pin round it.' };
  if (path.length < 2 || !last)
    return { at: 'refused', why: 'It has only one end so far: touch where it goes next.' };
  if (kind === 'plait' && !('pin' in last)) return { at: 'refused', why: NO_PIN.plait };
  return { at: 'whole', path, joined: false };
}

/** Why a place without a pin is refused. */
export const NO_PIN = {
  line: 'A working line goes from pin to pin, and no pin is near this place. Go closer, or put the pin in at the stage Pins.',
  plait:
    'A plait begins and ends at a pin, and no pin is near this place. Go closer, or put the pin in at the stage Pins.',
  picot: 'A picot is worked round a pin, and no pin is near this place.',
} as const;

/** The markings that a whole course stands for: a working line is kept piece by piece. */
export function marksOf(
  kind: Exclude<CourseKind, 'area'>,
  path: readonly Anchor[],
  { joined, width }: { readonly joined: boolean; readonly width: number },
): Unnamed<Mark>[] {
  switch (kind) {
    case 'line':
      return path.slice(1).map((to, at) => ({ kind, from: path[at]!, to }));
    case 'gimp':
      return [{ kind, path, closed: joined, width }];
    case 'plait':
      return [{ kind, path }];
    case 'arrow':
      return [{ kind, from: path[0]!, to: path[1]! }];
  }
}

/** Whether two working lines join the same pins, whichever way round. */
export function isSameLine(one: Unnamed<Mark>, other: Unnamed<Mark>): boolean {
  if (one.kind !== 'line' || other.kind !== 'line') return false;
  const same = (a: Anchor, b: Anchor) => isSame(a, b, 0);
  return (
    (same(one.from, other.from) && same(one.to, other.to)) ||
    (same(one.from, other.to) && same(one.to, other.from))
  );
}

/** Whether two anchors are one: the same pin, or places within `reach` of each other. */
export function isSame(one: Anchor, other: Anchor, reach: number): boolean {
  if ('pin' in one || 'pin' in other) return 'pin' in one && 'pin' in other && one.pin === other.pin;
  return Math.hypot(one.x - other.x, one.y - other.y) <= reach;
}
