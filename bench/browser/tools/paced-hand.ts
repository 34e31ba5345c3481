import type { Page } from 'playwright-core';

/** How the hand moves: with the button held, or by turning the wheel. */
export type HandMotion = 'drag' | 'wheel';

const STEPS = 240;

/**
 * Milliseconds from each frame to the next while a hand moves on the sheet in every one of them. The hand is in the
 * page itself: a driver outside it sends its moves less often than a screen shows frames.
 */
export const paceUnderHand = (
  page: Page,
  motion: HandMotion,
  [x, y]: readonly [number, number],
): Promise<number[]> =>
  page.evaluate(
    async ({ motion, x, y, steps }) => {
      const sheet = document.querySelector<HTMLCanvasElement>('canvas.sheet')!;
      const nextFrame = () => new Promise<number>((shown) => requestAnimationFrame(shown));
      const send = (type: string, across: number, down: number) =>
        sheet.dispatchEvent(
          new PointerEvent(type, {
            bubbles: true,
            cancelable: true,
            isPrimary: true,
            pointerType: 'mouse',
            // The mouse of every browser has this number; another could not be captured.
            pointerId: 1,
            button: type === 'pointermove' ? -1 : 0,
            buttons: type === 'pointerup' ? 0 : 1,
            clientX: across,
            clientY: down,
          }),
        );
      const turn = (deltaY: number) =>
        sheet.dispatchEvent(
          new WheelEvent('wheel', { bubbles: true, cancelable: true, deltaY, clientX: x, clientY: y }),
        );
      const intervals: number[] = [];
      if (motion === 'drag') send('pointerdown', x, y);
      let before = await nextFrame();
      for (let step = 0; step < steps; step++) {
        const angle = (4 * Math.PI * step) / steps;
        if (motion === 'drag') send('pointermove', x + 200 * Math.sin(angle), y + 150 * Math.sin(2 * angle));
        else turn(Math.floor(step / 30) % 2 === 0 ? 20 : -20);
        const now = await nextFrame();
        intervals.push(now - before);
        before = now;
      }
      if (motion === 'drag') send('pointerup', x + 40, y + 20);
      return intervals;
    },
    { motion, x, y, steps: STEPS },
  );
