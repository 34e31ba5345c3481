import { distance, type Point } from '#base/geometry/point.ts';
import { coursesOf } from '#paper/drawing/distance.ts';
import { type PlaceOf, placesOf } from '#paper/ink/places.ts';
import { anchorsOf } from '#pattern/anchors.ts';
import type { Anchor, Mark, Pattern } from '#pattern/pattern.ts';
import { inkOfMark } from '../../sheet/scene.ts';
import type { Overlay, SheetTool, SheetTouch } from '../../sheet/tool.ts';
import { marksOf } from './course.ts';
import { hatchAreas, outlineArea } from './draw-areas.ts';
import type { Marking } from './marking.ts';
import { withPoint } from './points.ts';

const ACCENT = '#1c5d5a';

/** The sheet while markings are made: the one that grows, and the chosen one. */
export class MarkTool implements SheetTool {
  readonly #marking: Marking;
  #pattern: Pattern;
  #placeOf: PlaceOf;
  /** The point of the chosen marking that is dragged, and where it is now. */
  #held: { readonly point: number; readonly at: Anchor } | null = null;

  constructor(marking: Marking, pattern: Pattern) {
    this.#marking = marking;
    this.#pattern = pattern;
    this.#placeOf = placesOf(pattern);
  }

  update(pattern: Pattern): void {
    if (pattern === this.#pattern) return;
    this.#pattern = pattern;
    this.#placeOf = placesOf(pattern);
  }

  tap(touch: SheetTouch): void {
    this.#marking.tap(touch);
  }

  grabs({ at, reach }: SheetTouch): boolean {
    const mark = this.#marking.watched.get().path.length === 0 ? this.#marking.chosenMark() : undefined;
    if (!mark) return false;
    let nearest = reach;
    anchorsOf(mark).forEach((anchor, point) => {
      const place = this.#placeOf(anchor);
      const away = place ? distance(place, at) : Infinity;
      if (away > nearest) return;
      nearest = away;
      this.#held = { point, at: anchor };
    });
    return this.#held !== null;
  }

  drag(_from: SheetTouch, to: SheetTouch): void {
    if (this.#held) this.#held = { ...this.#held, at: this.#marking.anchorAt(to) };
  }

  drop(_from: SheetTouch, to: SheetTouch, kept: boolean): void {
    const held = this.#held;
    this.#held = null;
    if (held && kept) this.#marking.drop(held.point, to);
  }

  /** Escape gives up what grows, Backspace takes its last pin back, Delete removes what is chosen. */
  key({ key }: KeyboardEvent): boolean {
    const { path, chosen, moving } = this.#marking.watched.get();
    if (key === 'Escape' && moving !== null) {
      this.#marking.move(null);
      return true;
    }
    if (key === 'Escape' && (path.length > 0 || chosen)) {
      if (path.length > 0) this.#marking.leave();
      else this.#marking.letGo();
      return true;
    }
    if (key === 'Backspace' && path.length > 0) {
      this.#marking.takeBack();
      return true;
    }
    if (key !== 'Delete' || chosen === null) return false;
    this.#marking.remove(chosen);
    return true;
  }

  draw(overlay: Overlay): void {
    const { wish, path, chosen, width, moving } = this.#marking.watched.get();
    const placeOf = this.#placeOf;
    const { areas } = this.#pattern;
    hatchAreas(overlay, this.#pattern, placeOf);
    const lightUp = (mark: Mark) => {
      for (const ink of inkOfMark(mark, placeOf)) light(overlay, coursesOf(ink));
    };
    const mark = this.#marking.chosenMark();
    if (mark) {
      const held = this.#held;
      const shown = held ? withPoint(mark, held.point, held.at) : mark;
      lightUp(shown);
      anchorsOf(shown).forEach((anchor, point) => {
        const place = placeOf(anchor);
        if (place) circle(overlay, place, point === (held?.point ?? moving) ? 13 : 7);
      });
    }
    const area = chosen?.list === 'areas' ? areas.find(({ id }) => id === chosen.id) : undefined;
    if (area) outlineArea(overlay, area.outline, placeOf, ACCENT);
    if (path.length > 1) {
      const kind = wish === 'gimp' || wish === 'plait' || wish === 'arrow' ? wish : 'line';
      for (const grown of marksOf(kind, path, { joined: false, width })) lightUp({ ...grown, id: '' });
    }
    path.forEach((anchor, at) => {
      const place = placeOf(anchor);
      if (place) circle(overlay, place, at === path.length - 1 ? 13 : 8);
    });
  }
}

function circle({ context, place }: Overlay, at: Point, radius: number): void {
  const { left, top } = place(at);
  context.lineWidth = 3;
  context.strokeStyle = ACCENT;
  context.beginPath();
  context.arc(left, top, radius, 0, 2 * Math.PI);
  context.stroke();
}

/** A broad band along where a marking runs, through which it is still seen. */
function light({ context, place }: Overlay, courses: readonly (readonly Point[])[]): void {
  context.save();
  context.lineCap = 'round';
  context.lineJoin = 'round';
  context.strokeStyle = ACCENT;
  for (const [width, alpha] of [
    [12, 0.3],
    [3, 0.9],
  ] as const) {
    context.globalAlpha = alpha;
    context.lineWidth = width;
    context.beginPath();
    for (const course of courses) {
      course.forEach((point, at) => {
        const { left, top } = place(point);
        if (at === 0) context.moveTo(left, top);
        else context.lineTo(left, top);
      });
    }
    context.stroke();
  }
  context.restore();
}
