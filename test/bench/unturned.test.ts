import sharp from 'sharp';
import { expect, test } from 'vitest';
import { headersIn } from '../../src/bench/worker/pictures/headers/index.ts';

const rgb = Uint8Array.from({ length: 20 * 12 * 3 }, (_, index) => (index * 37) % 256);
const drawn = sharp(rgb, { raw: { width: 20, height: 12, channels: 3 } });

test.each(['jpeg', 'png', 'webp'] as const)(
  'a %s file that is turned by its header is the same without it, in one piece',
  async (format) => {
    const turned = await drawn
      .clone()
      .withMetadata({ orientation: 6 })
      .toFormat(format, { lossless: true })
      .toBuffer();
    const headers = headersIn(new Uint8Array(turned), format)!;
    expect(headers.orientation).toBe(6);
    const bytes = headers.unturned();
    // Some browsers tell what a file is from its first piece alone, however short that is.
    expect(bytes).toBeInstanceOf(Uint8Array);
    expect((await sharp(bytes).metadata()).orientation).toBeUndefined();
    const pixels = (file: Uint8Array) =>
      sharp(file, { autoOrient: false } as object)
        .raw()
        .toBuffer();
    expect(await pixels(bytes)).toEqual(await pixels(turned));
  },
);

test('a file that nothing turns is taken as it is', async () => {
  const plain = new Uint8Array(await drawn.clone().jpeg().toBuffer());
  expect(headersIn(plain, 'jpeg')!.unturned()).toBe(plain);
});
