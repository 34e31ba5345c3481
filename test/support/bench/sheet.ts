import type { Page } from 'playwright-core';
import type { Point } from '#base/geometry/point.ts';
import { boxOfPattern, patternFromPins } from '#pattern/pins.ts';
import { cameraOn, toScreen } from '../../../src/bench/sheet/camera.ts';
import { jsonFile } from './files.ts';
import type { At } from './fingers.ts';

/** A pattern of a few pins, as a file to be opened. */
export const fileOfPins = (pins: readonly Point[]) => jsonFile('pins.json', { pins });

/** Where pins lie on the page while the whole sheet is shown. */
export async function placesOf(page: Page, pins: readonly Point[]): Promise<At[]> {
  const { x, y } = (await page.locator('canvas.sheet').boundingBox())!;
  const view = await page
    .locator('canvas.sheet')
    .evaluate(({ clientWidth, clientHeight }) => ({ width: clientWidth, height: clientHeight }));
  const camera = cameraOn(boxOfPattern(patternFromPins(pins)), view);
  return pins.map((pin) => {
    const { left, top } = toScreen(camera, view, pin);
    return [x + left, y + top];
  });
}

/** Waits until the sheet no longer changes. */
export async function sheetAtRest(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const canvas = document.querySelector<HTMLCanvasElement>('canvas.sheet')!;
    for (let before = '', same = 0; same < 5; ) {
      await new Promise(requestAnimationFrame);
      const now = canvas.toDataURL();
      same = now === before ? same + 1 : 0;
      before = now;
    }
  });
}

/** The middle of the ink within `reach` of a place, CSS pixels of the page, to a small part of one. */
export async function inkNear(page: Page, at: At, reach: number): Promise<At> {
  await sheetAtRest(page);
  return page.evaluate(
    ([[x, y], reach]) => {
      const canvas = document.querySelector<HTMLCanvasElement>('canvas.sheet')!;
      const { left, top } = canvas.getBoundingClientRect();
      const [column, row] = [Math.round(x - left - reach), Math.round(y - top - reach)];
      const side = Math.ceil(2 * reach);
      const { data } = canvas.getContext('2d')!.getImageData(column, row, side, side);
      let [ink, across, down] = [0, 0, 0];
      for (let index = 0; index < side * side; index++) {
        const dark = 255 - data[4 * index]!;
        ink += dark;
        across += dark * ((index % side) + 0.5);
        down += dark * (Math.floor(index / side) + 0.5);
      }
      return [left + column + across / ink, top + row + down / ink] as const;
    },
    [at, reach] as const,
  );
}
