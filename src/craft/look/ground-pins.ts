import { anchorsOf } from '#pattern/anchors.ts';
import type { Pattern } from '#pattern/pattern.ts';

/**
 * Ids of the pins at which four working lines meet or more: two pairs come in and two go out, as in ground. Where the
 * lines lead is told by the pattern; a row of such pins is no line or curve of its own.
 */
export function groundPins({ marks }: Pattern): ReadonlySet<string> {
  const lines = new Map<string, number>();
  for (const mark of marks) {
    if (mark.kind !== 'line') continue;
    for (const end of anchorsOf(mark)) if ('pin' in end) lines.set(end.pin, (lines.get(end.pin) ?? 0) + 1);
  }
  return new Set([...lines].flatMap(([pin, count]) => (count >= LINES_OF_GROUND ? [pin] : [])));
}

const LINES_OF_GROUND = 4;
