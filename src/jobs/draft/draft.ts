import { heightOf, widthOf } from '#base/geometry/box.ts';
import { done, failed, type Result } from '#base/result.ts';
import { draft } from '#craft/draft/draft.ts';
import type { LostEdit } from '#craft/draft/redraft/list.ts';
import { redraft } from '#craft/draft/redraft.ts';
import type { DraftTrouble } from '#craft/draft/trouble.ts';
import type { PatternWithPictures } from '#pattern/container/container.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPins } from '#pattern/pins.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { figuresOf } from '#pattern/recipe/walk.ts';
import { MOST_PINS } from '../open.ts';
import type { FigureTrouble, Trouble } from '../trouble.ts';
import { type FigureSet, withFigures } from './set.ts';
import { type RecipeSource, recipeSource } from './source.ts';

/** What drafting made. */
export interface DraftJob {
  readonly file: PatternWithPictures;
  readonly recipe: Recipe;
  readonly from: RecipeSource['from'];
  /** Edits by hand since the pattern was last drafted; none where it is drafted from a recipe alone. */
  readonly kept: number;
  readonly lost: readonly LostEdit[];
  /** From the outermost pin to the outermost pin, mm. */
  readonly width: number;
  readonly height: number;
}

/** Drafts a recipe with some of its figures set, or a pattern anew with its hand edits kept. */
export function draftRecipe(source: RecipeSource, sets: readonly FigureSet[]): Result<DraftJob, Trouble> {
  const set = withFigures(source.recipe, sets);
  if (!set.ok) return set;
  const recipe = set.value;
  const drafted =
    source.from === 'pattern' ? redraft(source.pattern, recipe) : drawn(draft(recipe, source.about));
  if (!drafted.ok) {
    return failed(explained(recipe, drafted.trouble));
  }
  const { pattern, kept, lost } = drafted.value;
  const { length } = pattern.pins;
  if (length > MOST_PINS) return failed({ kind: 'too-many-pins', count: length, limit: MOST_PINS });
  const box = boxOfPins(pattern);
  const pictures = source.from === 'pattern' ? source.pictures : new Map<string, Uint8Array>();
  return done({
    file: { pattern, pictures },
    recipe,
    from: source.from,
    kept,
    lost,
    width: widthOf(box),
    height: heightOf(box),
  });
}

/** Drafts what a file of ours holds: a recipe, or a pattern that keeps one. */
export function draftFile(bytes: Uint8Array): Result<DraftJob, Trouble> {
  const source = recipeSource(bytes);
  return source.ok ? draftRecipe(source.value, []) : source;
}

const drawn = <Trouble>(drafted: Result<Pattern, Trouble>) =>
  drafted.ok ? done({ pattern: drafted.value, kept: 0, lost: [] }) : drafted;

/** The trouble with what its figure means; a figure that the recipe does not take is no advice. */
function explained(recipe: Recipe, { nearest, ...trouble }: DraftTrouble): FigureTrouble {
  const { figure } = trouble;
  const means = figuresOf(recipe).find(({ path }) => path === figure)?.means ?? null;
  const works = nearest !== undefined && withFigures(recipe, [{ path: figure, text: String(nearest) }]).ok;
  return { ...trouble, ...(works && { nearest }), means };
}
