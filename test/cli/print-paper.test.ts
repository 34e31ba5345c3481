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
    const paper = await pinlight([...print, '--markings', 'paper', '-o', at('paper.png')]);
    expect(paper.err).toMatch(/Print at 100 %/);
    expect(paper.code).toBe(0);
    expect((await pinlight([...print, '--markings', 'drawn', '-o', at('drawn.png')])).code).toBe(0);
    // The thick thread, the hatching and the words of the paper are more ink than the working lines alone,
    const [withPaper, withLines] = [await sharesOf('paper'), await sharesOf('drawn')];
    expect(withPaper.inked).toBeGreaterThan(1.15 * withLines.inked);
    // and its yellowed ground is gone.
    expect(withPaper.white).toBeGreaterThan(0.9);
  });

  test('says what is missing where the pattern keeps no picture', async () => {
    expect((await pinlight(['trace', example, '-o', at('alone.json')])).code).toBe(0);
    const print = ['print', at('alone.json'), '--way', 'film', '--paper', 'A4', '-o', at('none.pdf')];
    const run = await pinlight([...print, '--markings', 'paper']);
    expect(run.code).toBe(2);
    expect(run.err).toMatch(/keeps the picture of its paper/);
  });
});

/** How much of the first complete sheet is dark, and how much is white. */
async function sharesOf(name: string): Promise<{ inked: number; white: number }> {
  const grey = await sharp(at(`${name}-complete-a1.png`))
    .greyscale()
    .raw()
    .toBuffer();
  const share = (is: (value: number) => boolean) => grey.filter(is).length / grey.length;
  return { inked: share((value) => value < 150), white: share((value) => value > 245) };
}
