import { useEffect, useRef } from 'react';

/** What has keys of its own: fields, lists, sliders and the sheet. */
const HAS_KEYS = 'input, textarea, select, canvas, [role="radiogroup"], [role="slider"]';
const IS_PRESSED = 'button, a, [role="button"], summary';

/**
 * Next and back by keys from anywhere on the page: arrows, page up and down (as pedals send), the space bar and Enter.
 */
export function useStepKeys(next: () => void, back: () => void): void {
  const steps = useRef({ next, back });
  steps.current = { next, back };
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.repeat || event.ctrlKey || event.metaKey || event.altKey) return;
      const target = event.target instanceof Element ? event.target : document.body;
      if (target.closest(HAS_KEYS)) return;
      const onButton = target.closest(IS_PRESSED) !== null;
      switch (event.key) {
        case ' ':
        case 'Enter':
          if (onButton) return;
          steps.current.next();
          break;
        case 'ArrowRight':
        case 'ArrowDown':
        case 'PageDown':
          steps.current.next();
          break;
        case 'ArrowLeft':
        case 'ArrowUp':
        case 'PageUp':
          steps.current.back();
          break;
        default:
          return;
      }
      event.preventDefault();
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, []);
}
