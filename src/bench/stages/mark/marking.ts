import { PointIndex } from '#base/geometry/point-index.ts';
import type { Reach } from '#craft/mark/bounds.ts';
import { placesOf } from '#paper/ink/places.ts';
import {
  addDrawn,
  type Drawn,
  type DrawnList,
  removeDrawn,
  type Unnamed,
  updateDrawn,
} from '#pattern/change/edit-drawn.ts';
import type { Anchor, Mark, Pattern } from '#pattern/pattern.ts';
import type { OpenDesign } from '../../document/open-design.ts';
import { announce } from '../../parts/announce.ts';
import type { SheetTouch } from '../../sheet/tool.ts';
import { Watched } from '../../watched/watched.ts';
import { CalledOff } from '../../worker/held-worker.ts';
import { AreaFinder } from './area-finder.ts';
import { finish, type Grown, grow, isSameLine, marksOf, NO_PIN } from './course.ts';
import { marksNear } from './marks-near.ts';
import { refusePoint, withPoint } from './points.ts';
import { areasAt, type Tint } from './tint.ts';
import { type CourseKind, drawnNames, type Wish } from './wishes.ts';

/** Where a person is with their marking. A new value after every touch. */
export interface MarkingState {
  readonly wish: Wish;
  /** Of the marking that grows; or where words are to be written. */
  readonly path: readonly Anchor[];
  readonly chosen: Chosen | null;
  /** What is to be known of the last touch, such as why it made nothing. */
  readonly said: string | null;
  /** Thickness of the next gimp, in the pattern's unit. */
  readonly width: number;
  /** The next number. */
  readonly number: number;
  /** Height of the next words, in the pattern's unit. */
  readonly height: number;
  /** How the next area is worked and tinted. */
  readonly tint: Tint;
  /** What the next area ends at: lines that are found, or pins that are touched one after the other. */
  readonly bounds: Reach | 'pins';
  /** The point of the chosen marking that the next touch puts elsewhere. */
  readonly moving: number | null;
}

/** A mark or an area. */
export interface Chosen {
  readonly list: DrawnList;
  readonly id: string;
}

/** Thickness of a gimp and height of words where nobody chose any, in the pattern's unit: our own, no source. */
const USUAL = { mm: { width: 0.8, height: 3 }, px: { width: 8, height: 30 } } as const;

/** An area that is not found sooner is said to be looked for, ms. */
const SOON = 300;
const LOOKING = 'Looking for the lines that go round this place …';

const CHANGED = 'The pattern was changed while the area was looked for. Touch it again.';

/** Markings and tints made, chosen, changed and removed: each a step of the design that can be undone. */
export class Marking {
  readonly watched: Watched<MarkingState>;
  readonly #design: OpenDesign;
  readonly #areas = new AreaFinder();
  /** Touches inside of areas, one after the other: each sees what the one before has tinted. */
  #tinting: Promise<void> = Promise.resolve();
  #pins: { readonly of: Pattern['pins']; readonly index: PointIndex } | null = null;

  constructor(design: OpenDesign, unit: Pattern['unit']) {
    this.#design = design;
    this.watched = new Watched<MarkingState>({
      wish: 'choose',
      path: [],
      chosen: null,
      said: null,
      number: numberAfter(design.state().pattern),
      tint: { stitch: 'cloth' },
      bounds: 'lines',
      moving: null,
      ...USUAL[unit],
    });
  }

  /** Lets go of what works beside the page. */
  close(): void {
    this.#areas.close();
  }

  wish(wish: Wish): void {
    if (wish === 'area') this.#areas.warm();
    this.#set({ wish, path: [], said: null, chosen: null });
  }

  /** What the next marking will be like. */
  set(next: Partial<Pick<MarkingState, 'width' | 'number' | 'height' | 'tint' | 'bounds'>>): void {
    this.#set(next.bounds ? { ...next, path: [], said: null } : next);
  }

  tap(touch: SheetTouch): void {
    const { wish, path, number, moving } = this.#state();
    const course = this.#course();
    const anchor = this.anchorAt(touch);
    if (moving !== null) this.#movePoint(moving, anchor);
    else if (wish === 'choose') this.#chooseAt(touch);
    else if (course) this.#grown(course, grow(course, path, anchor, touch.reach));
    else if (wish === 'area') this.#tinting = this.#tinting.then(() => this.#tintAt(touch));
    else if (wish === 'number') this.#put('marks', [{ kind: 'number', at: anchor, value: number }]);
    else if (wish === 'text') this.#set({ path: [anchor], said: null });
    else if ('pin' in anchor) this.#put('marks', [{ kind: 'picot', at: anchor, side: 'left' }]);
    else this.#say(NO_PIN.picot);
  }

  /** The marking that grows is whole. */
  finish(): void {
    const course = this.#course();
    if (course) this.#grown(course, finish(course, this.#state().path));
  }

  takeBack(): void {
    this.#set({ path: this.#state().path.slice(0, -1), said: null });
  }

  /** Nothing is made of the marking that grows. */
  leave(): void {
    this.#set({ path: [], said: null });
  }

  write(typed: string): void {
    const { path, height } = this.#state();
    const text = typed.trim();
    if (path[0] && text) this.#put('marks', [{ kind: 'text', at: path[0], text, height }]);
  }

  choose(chosen: Chosen | null): void {
    this.#set({ wish: 'choose', path: [], said: null, chosen });
  }

  letGo(): void {
    this.#set({ chosen: null });
  }

  change<List extends DrawnList>(list: List, record: Drawn[List], words: string): void {
    this.#design.edit(updateDrawn(this.#pattern(), list, record), words);
    announce(`${words}.`);
  }

  /** The next touch of the sheet says where this point of the chosen marking goes. */
  move(moving: number | null): void {
    this.#set({ moving, path: [], said: null });
  }

  /** A point of the chosen marking was dragged to where the touch is. */
  drop(point: number, touch: SheetTouch): void {
    this.#movePoint(point, this.anchorAt(touch));
  }

  chosenMark(): Mark | undefined {
    const { chosen } = this.#state();
    return chosen?.list === 'marks' ? this.#pattern().marks.find(({ id }) => id === chosen.id) : undefined;
  }

  remove({ list, id }: Chosen): void {
    const what = list === 'marks' ? 'marking' : 'tint';
    this.#design.edit(removeDrawn(this.#pattern(), list, id), `Removed a ${what}`);
    announce(`The ${what} was removed.`);
    this.#set({ chosen: null });
  }

  /** Lets go of what an undone step took away. */
  settle(pattern: Pattern): void {
    const { path, chosen } = this.#state();
    const there = new Set(pattern.pins.map(({ id }) => id));
    const kept = path.filter((anchor) => !('pin' in anchor) || there.has(anchor.pin));
    const isThere = !chosen || pattern[chosen.list].some(({ id }) => id === chosen.id);
    if (kept.length < path.length || !isThere) this.#set({ path: kept, chosen: isThere ? chosen : null });
  }

  /** What grows by touches now, if anything does. */
  #course(): CourseKind | null {
    const { wish, bounds } = this.#state();
    if (wish === 'area') return bounds === 'pins' ? 'area' : null;
    return wish === 'line' || wish === 'gimp' || wish === 'plait' || wish === 'arrow' ? wish : null;
  }

  /** A touch takes the nearest mark, or else the area that it lies in; again at the same place, what lies under that. */
  #chooseAt({ at, reach }: SheetTouch): void {
    const pattern = this.#pattern();
    const placeOf = placesOf(pattern);
    const near: Chosen[] = [
      ...marksNear(pattern.marks, placeOf, at, reach).map((id) => ({ list: 'marks', id }) as const),
      ...areasAt(pattern.areas, placeOf, at).map((id) => ({ list: 'areas', id }) as const),
    ];
    const { chosen } = this.#state();
    const now = near.findIndex(({ list, id }) => list === chosen?.list && id === chosen.id);
    const next = near[(now + 1) % near.length] ?? null;
    if (next) announce(`${this.#nameOf(next)} chosen.`);
    this.#set({ chosen: next, said: next ? null : 'No marking is near this place.' });
  }

  /** Tints what lines enclose; an area that is tinted already is chosen instead. */
  async #tintAt({ at }: SheetTouch): Promise<void> {
    const { tint, bounds } = this.#state();
    const pattern = this.#pattern();
    const [there] = areasAt(pattern.areas, placesOf(pattern), at);
    if (there) {
      announce('Area chosen.');
      this.#set({ chosen: { list: 'areas', id: there }, said: null });
    } else if (bounds !== 'pins') {
      const late = setTimeout(() => this.#say(LOOKING), SOON);
      try {
        const { outline, note } = await this.#areas.find(pattern, bounds, at);
        if (!outline) this.#say(note);
        else if (this.#pattern() === pattern) this.#put('areas', [{ outline, ...tint }], note);
        else this.#say(CHANGED);
      } catch (error) {
        if (!(error instanceof CalledOff)) this.#say(String(error));
      } finally {
        clearTimeout(late);
      }
    }
  }

  #movePoint(point: number, to: Anchor): void {
    const { marks } = this.#pattern();
    const mark = this.chosenMark();
    if (!mark) return;
    const moved = withPoint(mark, point, to);
    const why = refusePoint(moved, point, marks);
    if (why !== null) {
      this.#say(why);
      return;
    }
    this.#set({ moving: null, said: null });
    this.change('marks', moved, `Moved ${drawnNames[mark.kind].toLowerCase()}`);
  }

  #grown(course: CourseKind, grown: Grown): void {
    if (grown.at === 'refused') this.#say(grown.why);
    else if (grown.at === 'whole') this.#make(course, grown.path, grown.joined);
    else {
      announce(
        grown.path.length === 1 ? `${drawnNames[course]} begun.` : `Goes on, ${grown.path.length} points.`,
      );
      this.#set({ path: grown.path, said: null, chosen: null });
    }
  }

  #make(course: CourseKind, path: readonly Anchor[], joined: boolean): void {
    const { width, tint } = this.#state();
    if (course === 'area') return void this.#put('areas', [{ outline: path, ...tint }]);
    const { marks } = this.#pattern();
    const made = marksOf(course, path, { joined, width });
    const isThere = (mark: Unnamed<Mark>, at: number) =>
      marks.some((other) => isSameLine(mark, other)) ||
      made.slice(0, at).some((other) => isSameLine(mark, other));
    const fresh = made.filter((mark, at) => !isThere(mark, at));
    if (fresh.length > 0) this.#put('marks', fresh);
    else this.#set({ path: [], said: 'These pins are joined by working lines already.' });
  }

  #put<List extends DrawnList>(
    list: List,
    records: readonly Unnamed<Drawn[List]>[],
    note: string | null = null,
  ): void {
    const { change, ids } = addDrawn(this.#pattern(), list, records);
    const chosen = { list, id: ids.at(-1)! };
    const added = change[list]!.added[0]!.record;
    const name = drawnNames['kind' in added ? added.kind : 'area'].toLowerCase();
    const words = records.length > 1 ? `${records.length} working lines` : name;
    this.#design.edit(change, list === 'areas' ? 'Tinted an area' : `Drew ${words}`);
    announce(`Made: ${words}.`);
    const pattern = this.#pattern();
    // A tinted area is not chosen at once, so that one after the other can be tinted alike; a second touch chooses it.
    const isChosen = list === 'marks' && pattern.marks.some(({ id }) => id === chosen.id);
    this.#set({ path: [], said: note, chosen: isChosen ? chosen : null, number: numberAfter(pattern) });
  }

  #nameOf({ list, id }: Chosen): string {
    const mark = list === 'marks' ? this.#pattern().marks.find((one) => one.id === id) : undefined;
    return drawnNames[mark?.kind ?? 'area'];
  }

  #say(said: string): void {
    this.#set({ said });
  }

  /** The pin within reach, so that the marking moves with it, or else the place itself. */
  anchorAt({ at, reach }: SheetTouch): Anchor {
    const { pins } = this.#pattern();
    if (this.#pins?.of !== pins) this.#pins = { of: pins, index: new PointIndex(pins) };
    const near = this.#pins.index.nearest(at, reach);
    return near === null ? { x: at.x, y: at.y } : { pin: pins[near]!.id };
  }

  readonly #pattern = (): Pattern => this.#design.state().pattern;
  readonly #state = (): MarkingState => this.watched.get();

  #set(change: Partial<MarkingState>): void {
    // Another choice has nothing to do with where this one was to go.
    const moving = 'chosen' in change ? null : this.#state().moving;
    this.watched.set({ ...this.#state(), moving, ...change });
  }
}

/** The number that comes after the last one put. */
function numberAfter({ marks }: Pattern): number {
  const last = marks.findLast((mark) => mark.kind === 'number');
  return last?.kind === 'number' ? last.value + 1 : 1;
}
