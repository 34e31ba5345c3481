import type { ScreenPoint } from './camera.ts';

/** What fingers, pen and mouse say, once it is clear what was meant. */
export interface GestureListener {
  tap(at: ScreenPoint, by: PointerKind): void;
  /** A drag begins where the contact came down. */
  dragStart(from: ScreenPoint, by: PointerKind): void;
  drag(to: ScreenPoint): void;
  /** `kept` is false where the drag was broken off. */
  dragEnd(to: ScreenPoint, kept: boolean): void;
  /** Two fingers begin to move the sheet. */
  pinchStart(): void;
  /** What lay under `from` when the pinch began lies under `to` now, and everything is `factor` times as large as then. */
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
  readonly #stop = new AbortController();
  #dragging = false;
  /** Where the two fingers that move the sheet came down. */
  #pinchFrom: readonly [ScreenPoint, ScreenPoint] | null = null;
  #pinching = false;
  /** Whether some contact has moved, or was lost: the fingers have not just tapped. */
  #moved = false;
  #most = 0;
  #began = 0;

  constructor(element: HTMLElement, listener: GestureListener) {
    this.#element = element;
    this.#listener = listener;
    const { signal } = this.#stop;
    element.addEventListener('pointerdown', this.#down, { signal });
    element.addEventListener('pointermove', this.#move, { signal });
    element.addEventListener('pointerup', this.#up, { signal });
    element.addEventListener('pointercancel', this.#lost, { signal });
    element.addEventListener('lostpointercapture', this.#lost, { signal });
    element.addEventListener('wheel', this.#wheel, { passive: false, signal });
    element.addEventListener('contextmenu', (event) => event.preventDefault(), { signal });
    document.addEventListener('visibilitychange', this.breakOff, { signal });
    // A finger does not give the sheet the focus until it is lifted: Escape is heard wherever the focus is.
    addEventListener('keydown', this.#escape, { capture: true, signal });
  }

  stop(): void {
    this.#stop.abort();
    this.breakOff();
  }

  /** Ends whatever is under way as if it had not begun. */
  readonly breakOff = (): void => {
    const [contact] = this.#contacts.values();
    this.#contacts.clear();
    if (this.#dragging && contact) this.#listener.dragEnd(contact.now, false);
    this.#dragging = false;
    this.#pinching = false;
  };

  readonly #escape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || this.#contacts.size === 0) return;
    event.stopPropagation();
    this.breakOff();
  };

  readonly #down = (event: PointerEvent): void => {
    const kind = kindOf(event);
    if (kind === 'mouse' && event.button !== 0) return;
    const penIsDown = [...this.#contacts.values()].some((contact) => contact.kind === 'pen');
    if (kind === 'touch' && penIsDown) return;
    if (kind === 'pen') this.breakOff();
    if (this.#contacts.size === 0) {
      this.#most = 0;
      this.#began = event.timeStamp;
      this.#moved = false;
    }
    if (this.#dragging) {
      const [first] = this.#contacts.values();
      this.#listener.dragEnd(first!.now, false);
      this.#dragging = false;
    }
    const at = this.#place(event);
    this.#contacts.set(event.pointerId, { kind, start: at, now: at });
    this.#most = Math.max(this.#most, this.#contacts.size);
    this.#element.setPointerCapture(event.pointerId);
    this.#countFingers();
  };

  /** A pinch begins anew whenever there are two fingers again. */
  #countFingers(): void {
    this.#pinching = false;
    const [one, other] = this.#contacts.values();
    this.#pinchFrom = this.#contacts.size === 2 ? [one!.now, other!.now] : null;
  }

  readonly #move = (event: PointerEvent): void => {
    const contact = this.#contacts.get(event.pointerId);
    if (!contact) return;
    contact.now = this.#place(event);
    this.#moved ||= distance(contact.start, contact.now) > SLACK[contact.kind];
    if (!this.#moved) return;
    if (this.#most === 1) this.#dragOne(contact);
    else this.#pinch();
  };

  #dragOne(contact: Contact): void {
    if (!this.#dragging) this.#listener.dragStart(contact.start, contact.kind);
    this.#dragging = true;
    this.#listener.drag(contact.now);
  }

  #pinch(): void {
    const from = this.#pinchFrom;
    const [one, other] = this.#contacts.values();
    if (!from || !one || !other) return;
    if (!this.#pinching) this.#listener.pinchStart();
    this.#pinching = true;
    const span = (a: ScreenPoint, b: ScreenPoint) => Math.max(8, distance(a, b));
    this.#listener.pinch(
      middle(...from),
      middle(one.now, other.now),
      span(one.now, other.now) / span(...from),
    );
  }

  readonly #up = (event: PointerEvent): void => {
    const contact = this.#contacts.get(event.pointerId);
    if (!contact) return;
    this.#contacts.delete(event.pointerId);
    this.#countFingers();
    const at = this.#place(event);
    if (this.#dragging) {
      this.#dragging = false;
      this.#listener.dragEnd(at, true);
    } else if (this.#contacts.size === 0 && !this.#moved) {
      if (this.#most === 1) this.#listener.tap(at, contact.kind);
      else if (event.timeStamp - this.#began < TAP_TIME && (this.#most === 2 || this.#most === 3)) {
        this.#listener.fingersTapped(this.#most);
      }
    }
  };

  readonly #lost = (event: PointerEvent): void => {
    if (!this.#contacts.delete(event.pointerId)) return;
    this.#countFingers();
    this.#moved = true;
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

const distance = (a: ScreenPoint, b: ScreenPoint): number => Math.hypot(a.left - b.left, a.top - b.top);

const middle = (a: ScreenPoint, b: ScreenPoint): ScreenPoint => ({
  left: (a.left + b.left) / 2,
  top: (a.top + b.top) / 2,
});
