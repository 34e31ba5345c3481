import type { Drafted } from '#craft/draft/redraft.ts';
import { applyChange } from '#pattern/change/change.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { LatestJob } from '../../../worker/latest-job.ts';

/**
 * The lace as it becomes while a point is dragged: drafted beside the page as fast as that goes, and shown without
 * anything else on the page being made anew.
 */
export class DragPreview {
  readonly #drafter = new LatestJob('draftPreview');
  #drags = 0;
  #works: Recipe | null = null;
  /** The pattern that is dragged at, and its number with the worker. */
  #known: Drafted | null = null;
  #number = 0;

  /** Gets ready, so that the first drag need not wait. */
  warm(): void {
    this.#drafter.warm();
  }

  close(): void {
    this.#drags++;
    this.#drafter.close();
  }

  /** Drafts the pattern from a recipe, and shows what comes of it where the drag still goes on. */
  async ask(pattern: Drafted, recipe: Recipe, show: (pattern: Pattern) => void): Promise<void> {
    const drag = this.#drags;
    if (this.#known !== pattern) {
      this.#known = pattern;
      this.#number++;
    }
    const number = this.#number;
    // What cannot be drafted on the way, or breaks, is not shown; the drag's end tells of it.
    const draft = (given: Drafted | null) =>
      this.#drafter.ask({ number, pattern: given }, recipe).catch(() => null);
    let change = await draft(null);
    if (change === 'pattern-wanted') change = await draft(pattern);
    if (!change || change === 'pattern-wanted' || drag !== this.#drags) return;
    this.#works = recipe;
    show(applyChange(pattern, change));
  }

  /** Ends the drag; the recipe that was drafted last while it went on, or null where none was. */
  end(): Recipe | null {
    const works = this.#works;
    this.#drags++;
    this.#works = null;
    return works;
  }
}
