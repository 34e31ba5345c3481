import type { Page } from 'playwright-core';

/**
 * The peer: a page that draws the same dots anew in every frame, one arc each, on a canvas of the same size, while the
 * view moves as it does under the pointer.
 */
export async function drawPlainDots(
  page: Page,
  pins: readonly { readonly x: number; readonly y: number }[],
  size: { readonly width: number; readonly height: number },
  frames: number,
): Promise<void> {
  await page.evaluate(
    async ({ pins, width, height, frames }) => {
      const canvas = document.createElement('canvas');
      Object.assign(canvas, { width, height });
      document.body.replaceChildren(canvas);
      const context = canvas.getContext('2d', { alpha: false })!;
      const extent = Math.max(...pins.slice(-1).map(({ x, y }) => Math.max(x, y)));
      const scale = height / extent;
      for (let frame = 0; frame < frames; frame++) {
        await new Promise(requestAnimationFrame);
        context.setTransform(1, 0, 0, 1, 0, 0);
        context.fillStyle = '#ffffff';
        context.fillRect(0, 0, width, height);
        context.setTransform(scale, 0, 0, scale, frame, frame);
        context.fillStyle = '#000000';
        for (const { x, y } of pins) {
          context.beginPath();
          context.arc(x, y, 0.3, 0, 2 * Math.PI);
          context.fill();
        }
      }
    },
    { pins, ...size, frames },
  );
}
