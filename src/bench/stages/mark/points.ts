import { anchorsOf, mapAnchors } from '#pattern/anchors.ts';
import type { Anchor, Mark } from '#pattern/pattern.ts';
import { isSame, isSameLine, NO_PIN } from './course.ts';

/** The points of a marking as they are spoken of, in the order of its anchors. */
export function pointNames(mark: Mark): readonly string[] {
  if (mark.kind === 'arrow') return ['its tail', 'its head'];
  const count = anchorsOf(mark).length;
  if (count === 1) return ['it'];
  const isRing = mark.kind === 'gimp' && mark.closed;
  return Array.from({ length: count }, (_, at) => {
    if (at === 0 && !isRing) return 'its beginning';
    if (at === count - 1 && !isRing) return 'its end';
    return `point ${at + 1}`;
  });
}

/** The marking with one of its points elsewhere, whatever comes of it. */
export function withPoint(mark: Mark, point: number, to: Anchor): Mark {
  let next = 0;
  return mapAnchors(mark, (anchor) => (next++ === point ? to : anchor));
}

/** Why a marking cannot be what it has become by moving one of its points, or null where it can. */
export function refusePoint(moved: Mark, point: number, others: readonly Mark[]): string | null {
  const anchors = anchorsOf(moved);
  const isFree = !('pin' in anchors[point]!);
  const isEnd = point === 0 || point === anchors.length - 1;
  if (isFree && (moved.kind === 'line' || moved.kind === 'picot')) return NO_PIN[moved.kind];
  if (isFree && moved.kind === 'plait' && isEnd) return NO_PIN.plait;
  const isRing = moved.kind === 'gimp' && moved.closed;
  const meets = anchors.some((anchor, at) => {
    const next = anchors[at + 1] ?? (isRing ? anchors[0]! : null);
    return next !== null && isSame(anchor, next, 0);
  });
  if (meets) return 'Two points that follow each other cannot lie in one place. Touch another pin or place.';
  const isThere = others.some((other) => other.id !== moved.id && isSameLine(moved, other));
  return isThere ? 'These pins are joined by a working line already.' : null;
}
