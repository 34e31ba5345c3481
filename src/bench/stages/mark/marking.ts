import { PointIndex } from '#base/geometry/point-index.ts';
import { placesOf } from '#paper/ink/places.ts';
import { addDrawn, removeDrawn, type Unnamed, updateDrawn } from '#pattern/change/edit-drawn.ts';
import type { Anchor, Mark, Pattern } from '#pattern/pattern.ts';
import type { OpenDesign } from '../../document/open-design.ts';
import { announce } from '../../parts/announce.ts';
import type { SheetTouch } from '../../sheet/tool.ts';
import { Watched } from '../../watched/watched.ts';
import { finish, type Grown, grow, isSameLine, marksOf } from './course.ts';
import { marksNear } from './marks-near.ts';
import { type CourseKind, isCourse, markNames, type Wish } from './wishes.ts';

/** Where a person is with their marking. A new value after every touch. */
export interface MarkingState {
  readonly wish: Wish;
  /** Of the marking that grows; or where words are to be written. */
  readonly path: readonly Anchor[];
  /** Id of the chosen marking. */
  readonly chosen: string | null;
  /** Why the last touch made nothing. */
  readonly refusal: string | null;
  /** Thickness of the next gimp, mm. */
  readonly width: number;
  /** The next number. */
  readonly number: number;
  /** Height of the next words, mm. */
  readonly height: number;
}

/** Thickness of a gimp and height of words where nobody chose any, mm: our own, no source. */
const USUAL = { width: 0.8, height: 3 } as const;

/** Markings made, chosen, changed and removed: each a step of the design that can be undone. */
export class Marking {
  readonly watched: Watched<MarkingState>;
  readonly #design: OpenDesign;
  #pins: { readonly of: Pattern['pins']; readonly index: PointIndex } | null = null;

  constructor(design: OpenDesign) {
    this.#design = design;
    this.watched = new Watched<MarkingState>({
      wish: 'choose',
      path: [],
      chosen: null,
      refusal: null,
      number: numberAfter(design.state().pattern),
      ...USUAL,
    });
  }

  wish(wish: Wish): void {
    this.#set({ wish, path: [], refusal: null, chosen: null });
  }

  /** What the next marking will be like. */
  set(next: Partial<Pick<MarkingState, 'width' | 'number' | 'height'>>): void {
    this.#set(next);
  }

  tap(touch: SheetTouch): void {
    const { wish, path } = this.#state();
    const anchor = this.#anchorAt(touch);
    if (wish === 'choose') this.#chooseAt(touch);
    else if (isCourse(wish)) this.#grown(grow(wish, path, anchor, touch.reach));
    else if (wish === 'number') this.#put({ kind: 'number', at: anchor, value: this.#state().number });
    else if (wish === 'text') this.#set({ path: [anchor], refusal: null });
    else if ('pin' in anchor) this.#put({ kind: 'picot', at: anchor, side: 'left' });
    else this.#refuse('A picot is worked round a pin, and no pin is near this place.');
  }

  /** The marking that grows is whole. */
  finish(): void {
    const { wish, path } = this.#state();
    if (isCourse(wish)) this.#grown(finish(wish, path));
  }

  takeBack(): void {
    this.#set({ path: this.#state().path.slice(0, -1), refusal: null });
  }

  /** Nothing is made of the marking that grows. */
  leave(): void {
    this.#set({ path: [], refusal: null });
  }

  write(text: string): void {
    const { path, height } = this.#state();
    if (path[0] && text.trim()) this.#put({ kind: 'text', at: path[0], text: text.trim(), height });
  }

  choose(id: string | null): void {
    this.#set({ wish: 'choose', path: [], refusal: null, chosen: id });
  }

  change(mark: Mark, words: string): void {
    this.#design.edit(updateDrawn(this.#pattern(), 'marks', mark), words);
    announce(`${words}.`);
  }

  remove(id: string): void {
    this.#design.edit(removeDrawn(this.#pattern(), 'marks', id), 'Removed a marking');
    announce('The marking was removed.');
    this.#set({ chosen: null });
  }

  /** Lets go of what an undone step took away. */
  settle({ pins, marks }: Pattern): void {
    const { path, chosen } = this.#state();
    const there = new Set(pins.map(({ id }) => id));
    const kept = path.filter((anchor) => !('pin' in anchor) || there.has(anchor.pin));
    const isThere = chosen === null || marks.some(({ id }) => id === chosen);
    if (kept.length < path.length || !isThere) this.#set({ path: kept, chosen: isThere ? chosen : null });
  }

  /** A touch takes the nearest mark; again at the same place, the one under it. */
  #chooseAt({ at, reach }: SheetTouch): void {
    const pattern = this.#pattern();
    const near = marksNear(pattern.marks, placesOf(pattern), at, reach);
    const now = near.indexOf(this.#state().chosen ?? '');
    const chosen = near[(now + 1) % near.length] ?? null;
    const mark = pattern.marks.find(({ id }) => id === chosen);
    if (mark) announce(`${markNames[mark.kind]} chosen.`);
    this.#set({ chosen, refusal: mark ? null : 'No marking is near this place.' });
  }

  #grown(grown: Grown): void {
    const { wish } = this.#state();
    if (!isCourse(wish)) return;
    if (grown.at === 'refused') this.#refuse(grown.why);
    else if (grown.at === 'whole') this.#make(wish, grown.path, grown.joined);
    else {
      announce(
        grown.path.length === 1 ? `${markNames[wish]} begun.` : `Goes on, ${grown.path.length} points.`,
      );
      this.#set({ path: grown.path, refusal: null, chosen: null });
    }
  }

  #make(kind: CourseKind, path: readonly Anchor[], joined: boolean): void {
    const { marks } = this.#pattern();
    const made = marksOf(kind, path, { joined, width: this.#state().width });
    const isThere = (mark: Unnamed<Mark>, at: number) =>
      marks.some((other) => isSameLine(mark, other)) ||
      made.slice(0, at).some((other) => isSameLine(mark, other));
    const fresh = made.filter((mark, at) => !isThere(mark, at));
    if (fresh.length > 0) this.#put(...fresh);
    else this.#set({ path: [], refusal: 'These pins are joined by working lines already.' });
  }

  #put(...marks: readonly Unnamed<Mark>[]): void {
    const { change, ids } = addDrawn(this.#pattern(), 'marks', marks);
    const { kind } = marks[0]!;
    const words = marks.length > 1 ? `${marks.length} working lines` : markNames[kind].toLowerCase();
    this.#design.edit(change, `Drew ${words}`);
    announce(`Made: ${words}.`);
    const pattern = this.#pattern();
    const isMade = pattern.marks.some(({ id }) => id === ids[0]);
    this.#set({ path: [], refusal: null, chosen: isMade ? ids.at(-1)! : null, number: numberAfter(pattern) });
  }

  #refuse(why: string): void {
    this.#set({ refusal: why });
  }

  /** The pin within reach, so that the marking moves with it, or else the place itself. */
  #anchorAt({ at, reach }: SheetTouch): Anchor {
    const { pins } = this.#pattern();
    if (this.#pins?.of !== pins) this.#pins = { of: pins, index: new PointIndex(pins) };
    const near = this.#pins.index.nearest(at, reach);
    return near === null ? { x: at.x, y: at.y } : { pin: pins[near]!.id };
  }

  readonly #pattern = (): Pattern => this.#design.state().pattern;
  readonly #state = (): MarkingState => this.watched.get();

  #set(change: Partial<MarkingState>): void {
    this.watched.set({ ...this.#state(), ...change });
  }
}

/** The number that comes after the last one put. */
function numberAfter({ marks }: Pattern): number {
  const last = marks.findLast((mark) => mark.kind === 'number');
  return last?.kind === 'number' ? last.value + 1 : 1;
}
