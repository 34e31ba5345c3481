import { boxOf, heightOf, widthOf } from '#base/geometry/box.ts';
import { distance, type Point } from '#base/geometry/point.ts';

/**
 * The median distance from a pin to its nearest neighbour, over at most `SAMPLES` pins taken evenly through the list.
 * `near` gives the pins within a reach; the reach starts small and doubles, so that crowded places stay cheap.
 */
export function typicalSpacing(
  pins: readonly Point[],
  distinct: readonly number[],
  near: (place: Point, reach: number) => readonly number[],
): number {
  if (distinct.length < 2) return 0;
  const box = boxOf(distinct.map((index) => pins[index]!));
  const size = Math.hypot(widthOf(box), heightOf(box));
  const firstReach = size / distinct.length;
  const stride = Math.max(1, Math.floor(distinct.length / SAMPLES));

  const steps: number[] = [];
  for (let at = 0; at < distinct.length; at += stride) {
    const index = distinct[at]!;
    const pin = pins[index]!;
    for (let reach = firstReach; ; reach *= 2) {
      const others = near(pin, reach).filter((other) => other !== index);
      if (others.length === 0 && reach <= size) continue;
      steps.push(
        others.reduce(
          (least, other) => Math.min(least, distance(pin, pins[other]!)),
          Number.POSITIVE_INFINITY,
        ),
      );
      break;
    }
  }
  return median(steps);
}

/** The middle value (the upper of two); 0 for none. */
export function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1] ?? 0;
}

const SAMPLES = 500;
