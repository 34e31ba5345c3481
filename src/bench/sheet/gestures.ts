import type { ScreenPoint } from './camera.ts';

/** What fingers, pen and mouse say, once it is clear what was meant. */
export interface GestureListener {
  tap(at: ScreenPoint, by: PointerKind): void;
  /** A drag begins where the contact came down. */
  dragStart(from: ScreenPoint, by: PointerKind): void;
  drag(to: ScreenPoint): void;
  /** `kept` is false where the drag was broken off. */
  dragEnd(to: ScreenPoint, kept: boolean): void;
  /** Two fingers moved: what lay under `from` lies under `to` now, and everything grew by `factor`. */
  pinch(from: ScreenPoint, to: ScreenPoint, factor: number): void;
  wheel(at: ScreenPoint, across: number, down: number, zooming: boolean): void;
  /** Two fingers tapped, or three. */
  fingersTapped(count: 2 | 3): void;
}

export type PointerKind = 'touch' | 'pen' | 'mouse';

/** A contact that moves less than this, CSS pixels, is a tap. */
const SLACK: Readonly<Record<PointerKind, number>> = { touch: 9, pen: 6, mouse: 4 };
const TAP_TIME = 350;

interface Contact {
  readonly kind: PointerKind;
  readonly start: ScreenPoint;
  now: ScreenPoint;
}

/**
 * One finger or pen works, two fingers move and zoom the sheet. A second finger breaks off what the first began; a pen
 * breaks off every finger, and while it is down fingers count for nothing (the hand rests on the screen).
 */
export class Gestures {
  readonly #element: HTMLElement;
  readonly #listener: GestureListener;
  readonly #contacts = new Map<number, Contact>();
  #dragging = false;
  #pinched = false;
  #most = 0;
  #began = 0;

  constructor(element: HTMLElement, listener: GestureListener) {
    this.#element = element;
    this.#listener = listener;
    element.addEventListener('pointerdown', this.#down);
    element.addEventListener('pointermove', this.#move);
    element.addEventListener('pointerup', this.#up);
    element.addEventListener('pointercancel', this.#lost);
    element.addEventListener('lostpointercapture', this.#lost);
    element.addEventListener('wheel', this.#wheel, { passive: false });
    element.addEventListener('contextmenu', (event) => event.preventDefault());
    document.addEventListener('visibilitychange', this.#breakOff);
  }

  stop(): void {
    document.removeEventListener('visibilitychange', this.#breakOff);
    this.#breakOff();
  }

  /** Ends whatever is under way as if it had not begun: Escape, a hidden page. */
  readonly #breakOff = (): void => {
    const [contact] = this.#contacts.values();
    this.#contacts.clear();
    if (this.#dragging && contact) this.#listener.dragEnd(contact.now, false);
    this.#dragging = false;
    this.#pinched = false;
  };

  breakOff(): void {
    this.#breakOff();
  }

  readonly #down = (event: PointerEvent): void => {
    const kind = kindOf(event);
    if (kind === 'mouse' && event.button !== 0) return;
    const penIsDown = [...this.#contacts.values()].some((contact) => contact.kind === 'pen');
    if (kind === 'touch' && penIsDown) return;
    if (kind === 'pen') this.#breakOff();
    if (this.#contacts.size === 0) {
      this.#most = 0;
      this.#began = event.timeStamp;
      this.#pinched = false;
    }
    const at = this.#place(event);
    this.#contacts.set(event.pointerId, { kind, start: at, now: at });
    this.#most = Math.max(this.#most, this.#contacts.size);
    this.#element.setPointerCapture(event.pointerId);
    if (this.#contacts.size > 1 && this.#dragging) {
      const [first] = this.#contacts.values();
      this.#listener.dragEnd(first!.now, false);
      this.#dragging = false;
      this.#pinched = true;
    }
  };

  readonly #move = (event: PointerEvent): void => {
    const contact = this.#contacts.get(event.pointerId);
    if (!contact) return;
    const before = [...this.#contacts.values()].map(({ now }) => now);
    contact.now = this.#place(event);
    if (this.#contacts.size === 1 && this.#most === 1) this.#dragOne(contact);
    else if (this.#contacts.size === 2) this.#pinch(before);
  };

  #dragOne(contact: Contact): void {
    const away = Math.hypot(contact.now.left - contact.start.left, contact.now.top - contact.start.top);
    if (!this.#dragging && away <= SLACK[contact.kind]) return;
    if (!this.#dragging) this.#listener.dragStart(contact.start, contact.kind);
    this.#dragging = true;
    this.#listener.drag(contact.now);
  }

  #pinch([one, other]: readonly ScreenPoint[]): void {
    const [first, second] = [...this.#contacts.values()];
    if (!one || !other || !first || !second) return;
    const moved = (contact: Contact) =>
      Math.hypot(contact.now.left - contact.start.left, contact.now.top - contact.start.top) > SLACK.touch;
    if (!this.#pinched && !moved(first) && !moved(second)) return;
    this.#pinched = true;
    const span = (a: ScreenPoint, b: ScreenPoint) => Math.max(8, Math.hypot(a.left - b.left, a.top - b.top));
    this.#listener.pinch(
      middle(one, other),
      middle(first.now, second.now),
      span(first.now, second.now) / span(one, other),
    );
  }

  readonly #up = (event: PointerEvent): void => {
    const contact = this.#contacts.get(event.pointerId);
    if (!contact) return;
    this.#contacts.delete(event.pointerId);
    const at = this.#place(event);
    if (this.#dragging) {
      this.#dragging = false;
      this.#listener.dragEnd(at, true);
    } else if (this.#contacts.size === 0 && !this.#pinched) {
      if (this.#most === 1) this.#listener.tap(at, contact.kind);
      else if (event.timeStamp - this.#began < TAP_TIME && (this.#most === 2 || this.#most === 3)) {
        this.#listener.fingersTapped(this.#most);
      }
    }
  };

  readonly #lost = (event: PointerEvent): void => {
    if (!this.#contacts.delete(event.pointerId)) return;
    if (!this.#dragging) return;
    this.#dragging = false;
    this.#listener.dragEnd(this.#place(event), false);
  };

  readonly #wheel = (event: WheelEvent): void => {
    event.preventDefault();
    const line = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 18 : 1;
    // A trackpad's pinch comes as a wheel with the control key; shift turns a wheel sideways.
    const [across, down] = event.shiftKey ? [event.deltaY, 0] : [event.deltaX, event.deltaY];
    const zooming = event.ctrlKey || event.metaKey || (!event.shiftKey && Math.abs(event.deltaX) < 1);
    this.#listener.wheel(this.#place(event), across * line, down * line, zooming);
  };

  #place({ clientX, clientY }: MouseEvent): ScreenPoint {
    const { left, top } = this.#element.getBoundingClientRect();
    return { left: clientX - left, top: clientY - top };
  }
}

const kindOf = ({ pointerType }: PointerEvent): PointerKind =>
  pointerType === 'touch' || pointerType === 'pen' ? pointerType : 'mouse';

const middle = (a: ScreenPoint, b: ScreenPoint): ScreenPoint => ({
  left: (a.left + b.left) / 2,
  top: (a.top + b.top) / 2,
});
