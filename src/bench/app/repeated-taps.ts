import { preferencesNow } from '../settings/preferences.ts';

/** A tap so soon after another in the same place was not meant, milliseconds and CSS pixels. */
const SOON = 300;
const NEAR = 22;

const CONTROLS = 'button, a[href], label, summary, [role="button"]';

/**
 * A hand that trembles taps twice. The second tap counts for nothing, unless the settings say otherwise: neither on the
 * same button, nor on one that the first has put in its place. Buttons that go by steps (marked `data-steps`) take
 * every tap, and so does the sheet.
 */
export function countRepeatedTapsOnce(): void {
  let last: { readonly control: Element; readonly at: MouseEvent } | null = null;
  let pressed: Element | null = null;
  let ignoring = false;

  const isRepeat = (control: Element | null, event: MouseEvent): boolean => {
    if (!last || !control || control.closest('[data-steps]')) return false;
    if (event.timeStamp - last.at.timeStamp >= SOON) return false;
    const away = Math.hypot(event.clientX - last.at.clientX, event.clientY - last.at.clientY);
    return control === last.control || away <= NEAR;
  };
  const hear = (event: MouseEvent): void => {
    const control = event.target instanceof Element ? event.target.closest(CONTROLS) : null;
    if (event.type === 'pointerdown') {
      pressed = control;
      ignoring = preferencesNow().repeats === 'once' && isRepeat(control, event);
    }
    // A click that no tap made, by a key or a screen reader, has no count.
    const isTap = event.type !== 'click' || event.detail > 0;
    if (ignoring && isTap) {
      event.stopImmediatePropagation();
      event.preventDefault();
    } else if (event.type === 'pointerup' && control && control === pressed) last = { control, at: event };
  };
  for (const type of ['pointerdown', 'mousedown', 'pointerup', 'mouseup', 'click'] as const) {
    addEventListener(type, hear, { capture: true });
  }
}
