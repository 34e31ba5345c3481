import type { Pattern } from '#pattern/pattern.ts';
import type { StageId } from '../stages/stage.ts';

/** Where the work on a pattern begins when nobody asks for a stage: at whatever is there to work from. */
export function firstStage({ paper, pins, recipe }: Pattern): StageId {
  if (paper && pins.length === 0) return 'paper';
  return recipe ? 'draft' : 'pins';
}
