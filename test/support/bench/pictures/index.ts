import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { rolldown } from 'rolldown';
import { afterAll, beforeAll } from 'vitest';
import type { PixelPicture } from '#base/picture/warp.ts';
import type { Result } from '#base/result.ts';
import type { PictureIn, PictureTrouble } from '#jobs/picture/picture.ts';
import { launchChromium } from '../browser.ts';

/** The reading of pictures as the bench's worker does it, in a browser, called from a test. */
export interface PicturesInBrowser {
  picture(bytes: Uint8Array, name?: string): Promise<Result<PictureIn, PictureTrouble>>;
  pixels(bytes: Uint8Array): Promise<Result<PixelPicture, PictureTrouble>>;
  /** What was written to the console. */
  readonly said: string[];
}

const ADDRESS = 'http://pictures.test';
const at = (file: string) => fileURLToPath(new URL(file, import.meta.url));

/** Starts a browser with the reader of pictures before the tests of a file, and ends it after them. */
export function usePictures(): PicturesInBrowser {
  let browser: Browser | undefined;
  let page: Page | undefined;
  const said: string[] = [];
  beforeAll(async () => {
    const files = await bundled();
    browser = await launchChromium();
    page = await browser.newPage();
    page.on('console', (message) => said.push(message.text()));
    await page.route(`${ADDRESS}/**`, (route) => {
      const body = files.get(new URL(route.request().url()).pathname);
      if (body === undefined) return route.fulfill({ status: 404 });
      const contentType = body.startsWith('<') ? 'text/html' : 'text/javascript';
      return route.fulfill({ contentType, body });
    });
    await page.goto(`${ADDRESS}/`);
    await page.waitForFunction('globalThis.readPicture');
  });
  afterAll(() => browser?.close());
  const ask = async <Value>(job: string, bytes: Uint8Array, name: string | null) => {
    const text = Buffer.from(bytes).toString('base64');
    const answer = await page!.evaluate(
      ([job, text, name]) =>
        (globalThis as unknown as Record<string, (...given: unknown[]) => unknown>)[job!]!(text, name),
      [job, text, name] as const,
    );
    return inBytes(answer) as Value;
  };
  return {
    said,
    picture: (bytes, name) => ask('readPicture', bytes, name ?? null),
    pixels: (bytes) => ask('readPixels', bytes, null),
  };
}

async function bundled(): Promise<Map<string, string>> {
  const bundle = await rolldown({
    input: { page: at('page.ts'), worker: at('worker.ts') },
    platform: 'browser',
    logLevel: 'silent',
  });
  const { output } = await bundle.generate({ format: 'es', entryFileNames: '[name].js', dir: '/' });
  await bundle.close();
  const files = new Map(
    output.flatMap((file) => (file.type === 'chunk' ? [[`/${file.fileName}`, file.code]] : [])),
  );
  return files.set('/', '<!doctype html><script type="module" src="/page.js"></script>');
}

function inBytes(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inBytes);
  if (typeof value !== 'object' || value === null) return value;
  if ('base64' in value) return new Uint8Array(Buffer.from(String(value.base64), 'base64'));
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, inBytes(each)]));
}
