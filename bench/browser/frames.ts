/**
 * How the sheet answers the hand while it holds many pins, in a real browser without a graphics card; beside it the
 * same dots drawn plainly in every frame, one arc each, in the same run. `npm run bench -- frames 100000` measures only
 * that many; `frames lines` those with lines.
 */
import type { Browser, Page } from 'playwright-core';
import { launchChromium } from '../../test/support/bench/browser.ts';
import { goTo, openFile } from '../../test/support/bench/pages.ts';
import { type MainThread, quantile, watchMainThread } from './tools/main-thread.ts';
import { type HandMotion, paceUnderHand } from './tools/paced-hand.ts';
import { largePattern, withFile } from './tools/patterns.ts';
import { drawPlainDots } from './tools/plain-dots.ts';
import { tell, tellSpans } from './tools/report.ts';
import { measureServed } from './tools/served.ts';

/** A sixtieth of a second, and what the clock may err, milliseconds. */
const FRAME = 17.2;
const STEPS = 120;
const TAPS = 15;

await measureServed(async (address) => {
  const wanted = process.argv[2];
  for (const [count, lines] of [
    [20_000, false],
    [100_000, false],
    [20_000, true],
  ] as const) {
    if (wanted && wanted !== (lines ? 'lines' : String(count))) continue;
    const browser = await launchChromium();
    await measureFrames(browser, address, count, lines);
    await browser.close();
  }
});

async function measureFrames(
  browser: Browser,
  address: string,
  count: number,
  lines: boolean,
): Promise<void> {
  const name = `${count} pins${lines ? ' and as many lines' : ''}`;
  const pattern = largePattern(count, lines);
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(address);
  const opening = await watchMainThread(browser, page, async () => {
    await withFile('pattern.json', JSON.stringify(pattern), (file) => openFile(page, file));
    await goTo(page, 'Pins');
    await page.getByText(`${count} pins.`).waitFor();
    await page.waitForTimeout(2500);
  });
  tellSpans(`${name}: longest task, opening`, opening.tasks, 1, 100);

  const { x, y, width, height } = (await page.locator('canvas.sheet').boundingBox())!;
  const middle = [x + width / 2, y + height / 2] as const;
  const told = (doing: string, seen: MainThread) => {
    tellSpans(`${name}: frame work, ${doing}, middle`, seen.frames, 0.5);
    tellSpans(`${name}: frame work, ${doing}, 99 of 100`, seen.frames, 0.99, 16);
    tellSpans(`${name}: frame work, ${doing}, longest`, seen.frames, 1);
    tellSpans(`${name}: longest task, ${doing}`, seen.tasks, 1, 100);
  };
  const pace = async (doing: string, motion: HandMotion, from: readonly [number, number]) => {
    const intervals = await paceUnderHand(page, motion, from);
    tell(`${name}: from frame to frame, ${doing}, middle`, quantile(intervals, 0.5), 'ms', FRAME);
    tell(`${name}: from frame to frame, ${doing}, 99 of 100`, quantile(intervals, 0.99), 'ms');
    await page.waitForTimeout(1000);
  };
  const pan = await watchMainThread(browser, page, () => dragAbout(page, [middle[0] + 9, middle[1] + 9]));
  told('panning', pan);
  await pace('panning', 'drag', [middle[0] + 9, middle[1] + 9]);
  const zoom = await watchMainThread(browser, page, async () => {
    await page.mouse.move(...middle);
    for (let step = 0; step < STEPS; step++) {
      await page.mouse.wheel(0, Math.floor(step / 30) % 2 === 0 ? -30 : 30);
      await page.waitForTimeout(12);
    }
    await page.waitForTimeout(1000);
  });
  told('zooming', zoom);
  await pace('zooming', 'wheel', middle);

  // So near that a pin lies within reach of any place: about six pixels to the millimetre.
  const whole = height / (1.1 * 2.5 * Math.sqrt(2 * count));
  for (let step = 0; step < Math.log(6 / whole) / 0.4; step++) await page.mouse.wheel(0, -120);
  await page.waitForTimeout(2500);
  await page.mouse.click(...middle);
  await page.getByRole('button', { name: 'Show the pins as a table' }).waitFor();
  const chosen = page.getByRole('region', { name: 'The chosen pin' });
  if ((await chosen.count()) !== 1) throw new Error('No pin lies under the middle of the sheet.');
  const drag = await watchMainThread(browser, page, () => dragAbout(page, middle));
  told('dragging a pin', drag);
  const above = [middle[0], middle[1] - 100] as const;
  await page.mouse.click(...above);
  await page.waitForTimeout(1000);
  const place = () =>
    chosen
      .getByRole('textbox')
      .evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value).join());
  const before = await place();
  await pace('dragging a pin', 'drag', above);
  if ((await place()) === before) throw new Error('The pin was not dragged.');

  await page.getByText('adds a pin').click();
  const { answers } = await watchMainThread(browser, page, () => makeTaps(page, middle));
  if (answers.length !== TAPS) throw new Error('A tap was not answered.');
  tellSpans(`${name}: a tap is answered, middle of ${TAPS}`, answers, 0.5, 50);
  tellSpans(`${name}: a tap is answered, longest`, answers, 1);
  await page.close();

  if (lines) return;
  const peerPage = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await peerPage.goto(address);
  const peer = await watchMainThread(browser, peerPage, () =>
    drawPlainDots(peerPage, pattern.pins, { width: Math.round(width), height: Math.round(height) }, 30),
  );
  await peerPage.close();
  const middleOf = ({ frames }: MainThread) =>
    quantile(
      frames.map(({ own }) => own),
      0.5,
    );
  tellSpans(`${name}: frame work of the same dots drawn plainly, middle`, peer.frames, 0.5);
  tell(`${name}: plainly as against panning, middle`, middleOf(peer) / middleOf(pan), 'x');
}

/** Drags from a place to and fro, as fast as a screen shows it, and waits until the sheet is sharp again. */
async function dragAbout(page: Page, [x, y]: readonly [number, number]): Promise<void> {
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= STEPS; step++) {
    const angle = (2 * Math.PI * step) / STEPS;
    await page.mouse.move(x + 200 * Math.sin(angle), y + 150 * Math.sin(2 * angle));
    await page.waitForTimeout(12);
  }
  await page.mouse.move(x + 60, y + 30);
  await page.mouse.up();
  await page.waitForTimeout(1000);
}

/** Adds pins, and marks from each tap's end to the first frame that shows what it changed. */
async function makeTaps(page: Page, [x, y]: readonly [number, number]): Promise<void> {
  await page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('canvas.sheet')!;
    let answered = 0;
    canvas.addEventListener(
      'pointerup',
      (event) => {
        const { left, top } = canvas.getBoundingClientRect();
        const [column, row] = [event.clientX - left - 15, event.clientY - top - 15];
        const look = () => canvas.getContext('2d')!.getImageData(column, row, 30, 30).data.join();
        const before = look();
        performance.mark('asked');
        const frame = new MessageChannel();
        frame.port1.onmessage = () => {
          if (look() === before) return ask();
          performance.mark('answered');
          canvas.dataset.answered = String(++answered);
        };
        // A message sent in a frame is read when that frame has been painted.
        const ask = () => requestAnimationFrame(() => frame.port2.postMessage(null));
        ask();
      },
      { capture: true },
    );
  });
  for (let tap = 0; tap < TAPS; tap++) {
    await page.mouse.click(x - 140 + 20 * tap, y + 37);
    await page.locator(`canvas.sheet[data-answered="${tap + 1}"]`).waitFor();
    await page.waitForTimeout(500);
  }
}
