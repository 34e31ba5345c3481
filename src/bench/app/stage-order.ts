import type { Pattern } from '#pattern/pattern.ts';
import type { Stage, StageId } from '../stages/stage.ts';

/** Where the work on a pattern begins when nobody asks for a stage: at whatever is there to work from. */
export function firstStage({ paper, pins, recipe }: Pattern): StageId {
  if (paper && pins.length === 0) return 'paper';
  return recipe ? 'draft' : 'pins';
}

/** The stage to go to from `now`: a pattern without a recipe has nothing to draft. */
export function nextStage(stages: readonly Stage[], now: Stage, { recipe }: Pattern): Stage | undefined {
  return stages.slice(stages.indexOf(now) + 1).find(({ id }) => id !== 'draft' || recipe);
}
