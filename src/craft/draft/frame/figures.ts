import type { FrameRecipe } from '#pattern/recipe/frame.ts';

/** The figures of a frame, with what is usual where the recipe says nothing. */
export type FrameFigures = FrameRecipe & Required<Pick<FrameRecipe, 'headside' | 'areas'>>;

export const figuresOf = (recipe: FrameRecipe): FrameFigures => ({
  headside: { kind: 'straight' },
  areas: [],
  ...recipe,
});
