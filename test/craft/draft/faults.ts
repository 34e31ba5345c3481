import { distance } from '#base/geometry/point.ts';
import { silent } from '#base/progress.ts';
import { look } from '#jobs/look.ts';
import type { Pattern } from '#pattern/pattern.ts';

/**
 * What there is to say against a drafted pattern: findings, and pins that straightening would move by more than
 * 0.001 mm. Looking over and straightening find the regularity with the same words, so that it is found once here.
 */
export function faultsOf(pattern: Pattern): { findings: string[]; movedTooFar: string[] } {
  const { findings, regularity } = look(pattern, silent);
  return {
    findings: findings.map(({ sentence }) => sentence),
    movedTooFar: pattern.pins.flatMap((pin, k) =>
      distance(pin, regularity.places[k]!) > 0.001 ? [pin.id] : [],
    ),
  };
}
