import type { Point } from '#base/geometry/point.ts';
import type { Judgement } from '#craft/light/judgement.ts';
import type { Fault } from '#paper/sheet/light/fault-signs.ts';

/** What is to be seen to, with the pins that were not seen: pin by pin, then the holes that are too many. */
export function faultsOf(pins: readonly Point[], judgement: Judgement): Fault[] {
  const atPins = judgement.pins.flatMap(({ index, verdict, dx, dy, angle }): Fault[] => {
    if (verdict === 'good') return [];
    const { x, y } = pins[index]!;
    return [
      {
        kind: verdict,
        at: { x, y },
        ...(dx !== null && dy !== null && { hole: { x: x + dx, y: y + dy } }),
        ...(angle !== null && { angle: (angle * Math.PI) / 180 }),
      },
    ];
  });
  return [...atPins, ...judgement.extra.map(({ x, y }): Fault => ({ kind: 'extra', at: { x, y } }))];
}
