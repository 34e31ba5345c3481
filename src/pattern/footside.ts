import { distance } from '#base/geometry/point.ts';
import type { Pattern } from './pattern.ts';
import { pinsById } from './pins.ts';

/**
 * The distance between neighbouring footside pins: as the pattern states it, else the middle one (the upper of two) along
 * its footside runs; null where it has neither.
 */
export function footsideSpacing(pattern: Pattern): number | null {
  if (pattern.sizes.footsideSpacing !== undefined) return pattern.sizes.footsideSpacing;
  const pins = pinsById(pattern);
  const steps = pattern.runs
    .filter(({ role }) => role === 'footside')
    .flatMap((run) =>
      run.pins.slice(1).flatMap((id, k) => {
        const [from, to] = [pins.get(run.pins[k]!), pins.get(id)];
        return from && to ? [distance(from, to)] : [];
      }),
    )
    .sort((a, b) => a - b);
  const middle = steps[steps.length >> 1];
  return middle !== undefined && middle > 0 ? middle : null;
}
