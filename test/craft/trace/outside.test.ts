import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import type { GreyPicture } from '#base/picture/grey.ts';
import { findHoles } from '#craft/trace/holes.ts';
import { describeWith, outsidePath } from '../../support/outside.ts';
import { scoreHoles } from '../../support/score.ts';

/**
 * `acircles_pattern.png` of the Debian package opencv-doc: the asymmetric dot sheet of the OpenCV documentation,
 * 44 black dots on a lattice at 45 degrees. Lattice and diameter are a grey-weighted fit to the file, residual under
 * 0.004 pixels.
 */
describeWith(['dot-sheets'], 'the published sheet of 44 dots at 45 degrees', () => {
  const dots = Array.from({ length: 88 }, (_, k) => ({ i: k % 11, j: Math.floor(k / 11) }))
    .filter(({ i, j }) => (i + j) % 2 === 0)
    .map(({ i, j }) => ({ column: 285.922 + 118.1145 * i, row: 206.168 + 118.0951 * j, hidden: false }));

  it('is found whole, each dot within a quarter of a pixel, with its size and without being told a resolution', async () => {
    const { holes } = findHoles(await greyFile(outsidePath('dot-sheets', 'acircles_pattern.png')));
    const score = scoreHoles(holes, dots, 5);
    expect(score).toMatchObject({ right: 44, false: 0, missed: 0 });
    expect(score.rms).toBeLessThan(0.25);
    for (const { diameter, confidence } of holes) {
      expect(Math.abs(diameter - 94.42)).toBeLessThan(1);
      expect(confidence).toBeGreaterThan(0.95);
    }
  });
});

/**
 * `dualCircles.jpg` of the same package: a photo of two sheets, 44 black dots on white at the left and 44 white ones on
 * black at the right, one dot half covered, with a tape measure beside them.
 */
describeWith(['dot-sheets'], 'the published photo of two sheets of 44 dots', () => {
  it('shows the dark dots as they are and the light ones in its negative', async () => {
    const photo = await greyFile(outsidePath('dot-sheets', 'dualCircles.jpg'));
    const dark = findHoles(photo).holes.filter(({ confidence }) => confidence > 0.5);
    expect(dark.filter(({ column }) => column < photo.width / 2).length).toBeGreaterThanOrEqual(42);
    expect(dark.length).toBeLessThanOrEqual(48);
    const negative = { ...photo, grey: photo.grey.map((value) => 255 - value) };
    const light = findHoles(negative).holes.filter(({ confidence }) => confidence > 0.5);
    expect(light.filter(({ column }) => column > photo.width / 2).length).toBeGreaterThanOrEqual(43);
    expect(light.length).toBeLessThanOrEqual(50);
  });
});

/**
 * `ThruHolePlated.ncd`, a drill file that comes with gerbv (Debian package gerbv): 94 holes of tools from 0.864 to
 * 1.956 mm, drawn by gerbv itself at 600 dpi. Most are of 0.864 mm, so that is the page's dot; tools over 1.4 times
 * that are no dots of this page.
 */
describeWith(['gerbv', 'drill-file'], 'a published drill file, drawn by gerbv', () => {
  const pixels = 600 / 25.4;
  const file = outsidePath('drill-file', 'ThruHolePlated.ncd');

  it('shows every hole of about the main size, at its place and with its diameter', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'pinlight-gerbv-'));
    try {
      const png = join(folder, 'holes.png');
      const ink = ['-b', '#FFFFFF', '-f', '#000000FF'];
      execFileSync('gerbv', ['-x', 'png', '-D', '600', ...ink, '-o', png, file], {
        stdio: 'ignore',
      });
      const { holes } = findHoles(await greyFile(png), { dpi: 600 });
      const wanted = drillHoles(readFileSync(file, 'utf8')).filter(({ tool }) => tool < 1.4 * 0.864);
      // gerbv chooses the margin: the shift is taken from the means, all other freedom from the file
      const found = holes.filter(({ confidence }) => confidence > 0.5);
      expect(found).toHaveLength(wanted.length);
      const shift = {
        column: mean(found.map(({ column }) => column)) - mean(wanted.map(({ x }) => x * pixels)),
        row: mean(found.map(({ row }) => row)) + mean(wanted.map(({ y }) => y * pixels)),
      };
      for (const { x, y, tool } of wanted) {
        const near = found.find(
          (hole) =>
            Math.hypot(hole.column - shift.column - x * pixels, hole.row - shift.row + y * pixels) < 1,
        );
        expect(near, `hole at ${x}, ${y}`).toBeDefined();
        expect(Math.abs(near!.diameter / pixels - tool)).toBeLessThan(0.06);
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/** Tools (`T03C1.092`) and coordinates in thousandths of a millimetre; an axis that is not named keeps its value. */
function drillHoles(text: string): { x: number; y: number; tool: number }[] {
  const tools = new Map<string, number>();
  const holes: { x: number; y: number; tool: number }[] = [];
  let tool = 0;
  let x = 0;
  let y = 0;
  for (const line of text.split(/\r?\n/)) {
    const defined = /^(T\d+)C([\d.]+)$/.exec(line);
    if (defined) tools.set(defined[1]!, Number(defined[2]));
    else if (tools.has(line)) tool = tools.get(line)!;
    const at = /^(?:X(-?\d+))?(?:Y(-?\d+))?$/.exec(line);
    if (!line || !at || tool === 0) continue;
    x = at[1] === undefined ? x : Number(at[1]) / 1000;
    y = at[2] === undefined ? y : Number(at[2]) / 1000;
    holes.push({ x, y, tool });
  }
  return holes;
}

async function greyFile(path: string): Promise<GreyPicture> {
  const decoded = sharp(path).flatten({ background: '#fff' }).greyscale().raw();
  const { data, info } = await decoded.toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, grey: new Uint8Array(data) };
}
