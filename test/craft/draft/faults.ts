import { distance } from '#base/geometry/point.ts';
import { silent } from '#base/progress.ts';
import { roundsOf, straighten } from '#craft/true/index.ts';
import { look } from '#jobs/look.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** What there is to say against a drafted pattern: findings, and pins that straightening moves by more than 0.001 mm. */
export function faultsOf(pattern: Pattern): { findings: string[]; movedTooFar: string[] } {
  const { places } = straighten(pattern.pins, { rounds: roundsOf(pattern) });
  return {
    findings: look(pattern, silent).findings.map(({ sentence }) => sentence),
    movedTooFar: pattern.pins.flatMap((pin, k) => (distance(pin, places[k]!) > 0.001 ? [pin.id] : [])),
  };
}
