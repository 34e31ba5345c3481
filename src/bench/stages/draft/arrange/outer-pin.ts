import type { Pattern, Pin } from '#pattern/pattern.ts';

/** Where another pattern is joined. */
export type JoinSide = 'as-it-lies' | 'below' | 'right';

/** Pins this near to the outermost stand as far out, mm. */
const LEVEL = 0.01;

/** The pins that are to meet where another pattern is joined at a side; null where it stays as it lies. */
export function meetingPins(
  own: Pattern,
  other: Pattern,
  side: JoinSide,
): { readonly own: string; readonly other: string } | null {
  if (side === 'as-it-lies' || own.pins.length === 0 || other.pins.length === 0) return null;
  const [out, along] = side === 'below' ? (['y', 'x'] as const) : (['x', 'y'] as const);
  return { own: outermost(own.pins, out, along, 1).id, other: outermost(other.pins, out, along, -1).id };
}

/** The outermost pin one way; of several the first along the other. */
function outermost(pins: readonly Pin[], out: 'x' | 'y', along: 'x' | 'y', way: 1 | -1): Pin {
  const most = pins.reduce((far, pin) => Math.max(far, way * pin[out]), Number.NEGATIVE_INFINITY);
  return pins
    .filter((pin) => way * pin[out] >= most - LEVEL)
    .reduce((first, pin) => (pin[along] < first[along] ? pin : first));
}
