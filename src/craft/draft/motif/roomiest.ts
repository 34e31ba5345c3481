import type { GroundName } from '#pattern/recipe/ground.ts';
import { Drafting } from '../drafting.ts';
import { LEAST_SPACING } from '../trouble.ts';
import { Clearing } from './clearing.ts';
import { fillMotif } from './filling.ts';
import type { FittedMotif } from './fit.ts';
import type { Frame } from './frame.ts';

/** The largest clearance, to 0.01 mm, that leaves a filling at least one pin; null where none does. */
export function roomiest(ground: GroundName, motif: FittedMotif, frame: Frame): number | null {
  const holds = (clearance: number) => {
    const clearing = new Clearing(motif.shape, clearance);
    const place = { name: 'm', repeat: 0, outline: { join: () => {} } };
    return fillMotif(new Drafting(), ground, { ...motif, clearing }, { ...frame, clearance }, place) > 0;
  };
  if (!holds(LEAST_SPACING)) return null;
  let [works, fails] = [LEAST_SPACING, frame.clearance];
  while (fails - works > STEP / 2) {
    const middle = (works + fails) / 2;
    if (holds(middle)) works = middle;
    else fails = middle;
  }
  return Math.max(LEAST_SPACING, Math.floor(works / STEP) * STEP);
}

const STEP = 0.01;
