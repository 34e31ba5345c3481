import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { blobs } from '../../paper/support/blobs.ts';
import { inFolder } from '../../paper/support/raster.ts';
import { describeWith } from '../../support/outside.ts';
import { cut, expectedCentres, farthestOff, lopsided } from './support.ts';

const pattern = lopsided();
const svgOf = (wish: Parameters<typeof cut>[1] = {}) =>
  cut(pattern, { format: 'svg', hole: 0.6, kerf: 0, ...wish }).files[0]!;

/** Places with y down, as SVG has it. */
const downward = (height: number): number[][] =>
  expectedCentres(pattern, 0.6).map(([x, y]) => [x, height - y]);

describe('the cutting file as text', () => {
  const { text, width, height } = svgOf({ card: { margin: 10 } });

  test('says its size in mm, one unit a mm, and transforms and fills nothing', () => {
    const [, w, h, viewBox] = /<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(
      text,
    )!;
    expect([Number(w), Number(h)]).toEqual([width, height].map((side) => Number(side.toFixed(4))));
    expect(viewBox).toBe(`0 0 ${w} ${h}`);
    expect(text).not.toMatch(/transform|<text|<use|<image|style=/);
    expect(text.match(/fill="[^"]*"/g)!.every((fill) => fill === 'fill="none"')).toBe(true);
    expect(text).not.toMatch(/\d[eE][-+]?\d/);
  });

  test('one pure colour for each thing that is done, holes before the outline', () => {
    const groups = [...text.matchAll(/<g id="(\w+)" fill="none" stroke="(#\w+)"/g)].map(([, id, colour]) => [
      id,
      colour,
    ]);
    expect(groups).toEqual([
      ['HOLES', '#ff0000'],
      ['OUTLINE', '#0000ff'],
    ]);
  });

  test('a shop\u2019s own colours and lines', () => {
    const preset = {
      format: 'pinlight-cutting',
      version: 1,
      name: 'Quayside workshop',
      svg: { stroke: 0.1, colours: { HOLES: '#00ffff' } },
    } as const;
    expect(svgOf({ preset }).text).toContain(
      '<g id="HOLES" fill="none" stroke="#00ffff" stroke-width="0.100">',
    );
  });

  test('circles, to 0.001 mm, however the holes are drawn', () => {
    const plain = svgOf();
    const circles = [...plain.text.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)"/g)].map(
      (found) => found.slice(1).map(Number),
    );
    expect(farthestOff(circles, downward(plain.height))).toBeLessThan(0.001);
    expect(new Set(circles.map(([, , r]) => r))).toEqual(new Set([0.3]));
    expect(svgOf({ holes: 'arcs' }).text.match(/<path d="M[^"]*A[^"]*A[^"]*Z"/g)).toHaveLength(
      pattern.pins.length,
    );
    expect(svgOf({ holes: 'polyline' }).text.match(/<path d="M[^"A]*Z"/g)).toHaveLength(pattern.pins.length);
  });
});

/** At 1270 dots an inch there are 50 pixels a mm; holes are drawn with lines of 0.1 mm so that pixels show them. */
const DPI = 1270;

describe('the cutting file as pixels, in resvg', () => {
  test.each(['circle', 'polyline', 'arcs'] as const)('%s', async (holes) => {
    const { text, width, height } = svgOf({ holes, stroke: 0.1 });
    expectHoles(
      await found(new Resvg(text, { dpi: DPI, background: '#ffffff' }).render().asPng(), width, height),
      height,
    );
  });
});

describeWith(['rsvg-convert'], 'the cutting file as pixels, in librsvg', () => {
  test('circles', async () => {
    const { text, width, height } = svgOf({ stroke: 0.1 });
    const png = inFolder((folder) => {
      writeFileSync(join(folder, 'in.svg'), text);
      return execFileSync(
        'rsvg-convert',
        ['-b', 'white', '-d', `${DPI}`, '-p', `${DPI}`, join(folder, 'in.svg')],
        {
          maxBuffer: 1e9,
        },
      );
    });
    expectHoles(await found(png, width, height), height);
  });
});

async function found(png: Uint8Array, width: number, height: number) {
  const { data, info } = await sharp(png).greyscale().raw().toBuffer({ resolveWithObject: true });
  const mm = 25.4 / DPI;
  expect(Math.abs(info.width * mm - width)).toBeLessThan(2 * mm);
  expect(Math.abs(info.height * mm - height)).toBeLessThan(2 * mm);
  const picture = { width: info.width, height: info.height, grey: new Uint8Array(data) };
  return blobs({ picture, mm: { x: mm, y: mm } }, { left: 0, top: 0, right: width, bottom: height });
}

function expectHoles(spots: Awaited<ReturnType<typeof found>>, height: number): void {
  // Those on the edge of the frame lose half of their line there, and their middles with it.
  expect(spots).toHaveLength(pattern.pins.length);
  const inner = spots.filter(({ width, height: tall }) => width > 0.68 && tall > 0.68);
  expect(inner.length).toBeGreaterThan(pattern.pins.length / 2);
  const places = downward(height);
  for (const { centre, width } of inner) {
    expect(Math.min(...places.map(([x, y]) => Math.hypot(x! - centre.x, y! - centre.y)))).toBeLessThan(0.005);
    // The line's outer edge lies half of its width outside the hole.
    expect(Math.abs(width - 0.7)).toBeLessThan(0.045);
  }
}
