import { expect, test } from 'vitest';
import { loupePlace } from '../../src/bench/sheet/loupe.ts';

test.each([
  [860, 660],
  [820, 560],
  [320, 300],
  [320, 120],
])(
  'on a sheet of %d by %d the loupe is whole, and beside or above the finger wherever that is',
  (width, height) => {
    const steps = Array.from({ length: 41 }, (_, step) => step / 40);
    for (const across of steps) {
      for (const down of steps) {
        const finger = { left: across * width, top: down * height };
        const { left, top, radius } = loupePlace(finger, { width, height })!;
        expect(left - radius).toBeGreaterThanOrEqual(0);
        expect(left + radius).toBeLessThanOrEqual(width);
        expect(top - radius).toBeGreaterThanOrEqual(0);
        expect(top + radius).toBeLessThanOrEqual(height);
        // A fingertip is about 40 pixels wide.
        expect(Math.hypot(left - finger.left, top - finger.top) - radius).toBeGreaterThanOrEqual(40);
        expect(top).toBeLessThanOrEqual(Math.max(finger.top, radius));
      }
    }
  },
);
