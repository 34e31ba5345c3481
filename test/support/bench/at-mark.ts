import type { Point } from '#base/geometry/point.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern, patternFromPins } from '#pattern/pins.ts';
import { type Camera, cameraOn, toScreen } from '../../../src/bench/sheet/camera.ts';
import { goTo, jsonFile, openFile, savedPattern, type Visit } from './index.ts';

/** Pins p1 to p4 at the corners of an upright rectangle of 16 by 40 mm, p5 in its middle. */
export const five = patternFromPins([
  { x: 0, y: 0 },
  { x: 16, y: 0 },
  { x: 16, y: 40 },
  { x: 0, y: 40 },
  { x: 8, y: 20 },
]);
export const [p1, p2, p3, p4, p5] = five.pins as unknown as [Point, Point, Point, Point, Point];

const asFile = ({ pins, marks, areas }: Pattern) => jsonFile('five.json', { pins, marks, areas });

/** Opens the pattern at the stage Mark, with ways to touch it where one means to. */
export async function atMark(visit: Visit, pattern = five) {
  const { page } = visit;
  await openFile(page, asFile(pattern));
  await goTo(page, 'Mark');
  const sheet = page.locator('canvas.sheet');
  const { x, y, width, height } = (await sheet.boundingBox())!;
  const view = { width, height };
  const camera: Camera = cameraOn(boxOfPattern(pattern), view);
  let cursor = { left: width / 2, top: height / 2 };
  return {
    page,
    wish: (words: string | RegExp) => page.locator('.wishes').getByText(words).click(),
    async click(place: Point) {
      const { left, top } = toScreen(camera, view, place);
      await sheet.click({ position: { x: left, y: top } });
    },
    async drag(from: Point, to: Point) {
      const [begin, end] = [toScreen(camera, view, from), toScreen(camera, view, to)];
      await page.mouse.move(x + begin.left, y + begin.top);
      await page.mouse.down();
      await page.mouse.move(x + (begin.left + end.left) / 2, y + (begin.top + end.top) / 2);
      await page.mouse.move(x + end.left, y + end.top);
      await page.mouse.up();
    },
    async tap(place: Point) {
      const { left, top } = toScreen(camera, view, place);
      await page.touchscreen.tap(x + left, y + top);
    },
    /** Takes the keyboard's cursor there and presses Enter. */
    async enter(place: Point) {
      await sheet.focus();
      const { left, top } = toScreen(camera, view, place);
      const steps = async (away: number, forward: string, back: string): Promise<number> => {
        const count = Math.round(away / 20);
        for (let step = 0; step < Math.abs(count); step++)
          await page.keyboard.press(count > 0 ? forward : back);
        return count * 20;
      };
      cursor = {
        left: cursor.left + (await steps(left - cursor.left, 'ArrowRight', 'ArrowLeft')),
        top: cursor.top + (await steps(top - cursor.top, 'ArrowDown', 'ArrowUp')),
      };
      await page.keyboard.press('Enter');
    },
    saved: () => savedPattern(page),
  };
}
