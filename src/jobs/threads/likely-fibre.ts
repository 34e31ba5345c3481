import type { Fibre } from '#base/units/yarn/fibre.ts';
import type { YarnSystem } from '#base/units/yarn/system.ts';
import type { Yarn } from '#base/units/yarn/yarn.ts';

/** Labels in these systems are of these fibres unless something else is said. */
const FIBRE_OF: Partial<Record<YarnSystem, Fibre>> = { NeL: 'linen', Ne: 'cotton', NeK: 'wool' };

/** What a thread is most likely spun of, by its label and what was read from it; null where nothing tells. */
export function likelyFibre(label: string | null, yarn: Yarn | null): Fibre | null {
  if (label && /silk/i.test(label)) return 'silk';
  // Counted windings alone tell the thickness; which fibre it is then only tells its weight.
  return yarn ? (FIBRE_OF[yarn.system] ?? null) : 'cotton';
}
