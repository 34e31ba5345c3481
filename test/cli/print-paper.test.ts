import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { pinlight, useCommand } from '../support/cli.ts';

const { at } = useCommand();
const example = fileURLToPath(new URL('../../examples/rosehip-edging.jpg', import.meta.url));

describe('pinlight print --markings paper', () => {
  test("prints the paper's own picture under the straightened pins of the example", async () => {
    expect((await pinlight(['trace', example, '-o', at('traced.pinlight')])).code).toBe(0);
    expect((await pinlight(['true', at('traced.pinlight'), '-o', at('trued.pinlight')])).code).toBe(0);
    const print = ['print', at('trued.pinlight'), '--way', 'film', '--paper', 'A4', '--dpi', '100'];
    const run = await pinlight([...print, '--markings', 'paper', '-o', at('sheet.png')]);
    expect(run.err).toMatch(/Print at 100 %/);
    expect(run.code).toBe(0);
    // The middle of the sheet is the paper of the scan, which is yellowed, and not the white of a new sheet.
    const { data, info } = await sharp(at('sheet-complete-a1.png'))
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    let yellowed = 0;
    for (let k = 0; k < data.length; k += info.channels)
      if (data[k]! > 180 && data[k]! - data[k + 2]! > 12) yellowed++;
    expect(yellowed / (info.width * info.height)).toBeGreaterThan(0.1);
  });

  test('says what is missing where the pattern keeps no picture', async () => {
    expect((await pinlight(['trace', example, '-o', at('alone.json')])).code).toBe(0);
    const print = ['print', at('alone.json'), '--way', 'film', '--paper', 'A4', '-o', at('none.pdf')];
    const run = await pinlight([...print, '--markings', 'paper']);
    expect(run.code).toBe(2);
    expect(run.err).toMatch(/keeps the picture of its paper/);
  });
});
