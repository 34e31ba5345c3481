import { distance, type Point } from '#base/geometry/point.ts';
import type { Guide, GuideSpot } from '#craft/draft/guides/guide.ts';
import { guideAt, nearestSpot } from '#craft/draft/guides/guides.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import type { Overlay, SheetTool, SheetTouch } from '../../../sheet/tool.ts';
import { drawGuides } from './draw-guides.ts';

/** What a touch of the sheet does. */
export type GuideMode = 'choose' | 'add';

/** A point by its guide and its place in it. */
export interface ChosenPoint {
  readonly guide: number;
  readonly point: number;
}

export interface GuideToolState {
  readonly guides: readonly Guide[];
  readonly mode: GuideMode;
  readonly chosen: ChosenPoint | null;
}

export interface GuideToolEvents {
  choose(chosen: ChosenPoint | null): void;
  /** What the recipe is with the point where it is while it is dragged. */
  drag(recipe: Recipe): void;
  /** Where it was let go; null where the drag was broken off. */
  drop(chosen: ChosenPoint, place: Point | null): void;
  nudge(across: number, down: number): void;
  add(guide: number, spot: GuideSpot): void;
  remove(): void;
}

/** How far an arrow key moves a point, mm; with Shift the second. */
export const NUDGES = [0.1, 1] as const;

/** Choosing, dragging, nudging and adding guiding points on the sheet. */
export class GuideTool implements SheetTool {
  readonly #events: GuideToolEvents;
  #state: GuideToolState = { guides: [], mode: 'choose', chosen: null };
  #held: { readonly chosen: ChosenPoint; readonly start: Guide; now: Guide } | null = null;

  constructor(events: GuideToolEvents) {
    this.#events = events;
  }

  update(state: GuideToolState): void {
    this.#state = state;
  }

  tap(touch: SheetTouch): void {
    const near = this.#pointAt(touch);
    if (near || this.#state.mode === 'choose') this.#events.choose(near);
    else this.#add(touch);
  }

  grabs(touch: SheetTouch): boolean {
    const chosen = this.#pointAt(touch);
    if (!chosen) return false;
    const start = this.#state.guides[chosen.guide]!;
    this.#held = { chosen, start, now: start };
    this.#events.choose(chosen);
    return true;
  }

  drag(from: SheetTouch, to: SheetTouch): void {
    const held = this.#held;
    if (!held) return;
    const { start, chosen } = held;
    const recipe = start.move(chosen.point, moved(start.points[chosen.point]!, from, to));
    held.now = guideAt(recipe, start.path) ?? start;
    this.#events.drag(recipe);
  }

  drop(from: SheetTouch, to: SheetTouch, kept: boolean): void {
    const held = this.#held;
    this.#held = null;
    if (!held) return;
    const { start, chosen } = held;
    this.#events.drop(chosen, kept ? moved(start.points[chosen.point]!, from, to) : null);
  }

  key({ key, shiftKey, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
    if (!this.#state.chosen || ctrlKey || metaKey || altKey) return false;
    const way = WAYS[key];
    if (way) {
      const step = NUDGES[shiftKey ? 1 : 0];
      this.#events.nudge(way[0] * step, way[1] * step);
    } else if (key === 'Escape') this.#events.choose(null);
    else if (key === 'Delete') this.#events.remove();
    else return false;
    return true;
  }

  draw(overlay: Overlay): void {
    const held = this.#held;
    const { guides, chosen } = this.#state;
    drawGuides(overlay, held ? guides.with(held.chosen.guide, held.now) : guides, chosen);
  }

  #add({ at, reach }: SheetTouch): void {
    let best: { guide: number; spot: GuideSpot; away: number } | null = null;
    for (const [guide, { line, add }] of this.#state.guides.entries()) {
      const near = add && nearestSpot(line, at);
      if (near && near.away <= reach && near.away < (best?.away ?? Number.POSITIVE_INFINITY)) {
        best = { guide, ...near };
      }
    }
    if (best) this.#events.add(best.guide, best.spot);
  }

  #placeOf({ guide, point }: ChosenPoint): Point {
    return this.#state.guides[guide]!.points[point]!;
  }

  /** The nearest point; the chosen one where several lie under the touch and it is among them. */
  #pointAt({ at, reach }: SheetTouch): ChosenPoint | null {
    const { guides, chosen } = this.#state;
    if (chosen && distance(this.#placeOf(chosen), at) <= reach / 2) return chosen;
    let best: ChosenPoint | null = null;
    let least = reach;
    for (const [guide, { points }] of guides.entries()) {
      for (const [point, place] of points.entries()) {
        const away = distance(place, at);
        if (away > least) continue;
        best = { guide, point };
        least = away;
      }
    }
    return best;
  }
}

const moved = (start: Point, from: SheetTouch, to: SheetTouch): Point => ({
  x: start.x + to.at.x - from.at.x,
  y: start.y + to.at.y - from.at.y,
});

const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
