import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type CutPattern, cutPattern } from '#jobs/cut/cut.ts';
import type { CutWish } from '#jobs/cut/wish.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { typeface } from '../../paper/support/fonts.ts';
import { inFolder } from '../../paper/support/raster.ts';

/** A pattern that no mirror and no turn maps on itself: a lattice with a corner missing, off the origin. */
export function lopsided(): Pattern {
  const pins = [];
  for (let row = 0; row < 9; row++) {
    for (let column = 0; column < 7; column++) {
      if (row < 3 && column > 4) continue;
      pins.push({ x: 17.123 + 4 * column + 2 * (row % 2), y: -3.456 + 2 * row });
    }
  }
  return { ...patternFromPins([...pins, { x: 60.001, y: 25.004 }]), scale: { from: 'drafted' } };
}

/** Cuts and expects that nothing stood in the way. */
export function cut(pattern: Pattern, wish: Partial<CutWish> = {}): CutPattern {
  const result = cutPattern(pattern, { typeface, format: 'dxf', ...wish });
  if (!result.ok) throw new Error(`Could not cut: ${JSON.stringify(result.trouble)}`);
  return result.value;
}

export interface ReadBack {
  readonly version: string;
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly units: number;
  readonly layers: readonly string[];
  readonly order: readonly string[];
  readonly types: readonly string[];
  readonly circles: readonly (readonly [number, number, number])[];
  readonly points: readonly (readonly [number, number])[];
  readonly box: readonly [number, number, number, number];
}

/** What ezdxf makes of a file. */
export const byEzdxf = (dxf: string): ReadBack =>
  inFolder((folder) => {
    const file = join(folder, 'in.dxf');
    writeFileSync(file, dxf);
    const script = fileURLToPath(new URL('read-back.py', import.meta.url));
    return JSON.parse(execFileSync('/usr/bin/python3', [script, file], { encoding: 'utf8' }));
  });

/** Places of the pins with y up, moved so that a hole of `hole` mm at each touches both axes. */
export function expectedCentres({ pins }: Pattern, hole: number): [number, number][] {
  const left = Math.min(...pins.map(({ x }) => x));
  const bottom = Math.max(...pins.map(({ y }) => y));
  return pins.map(({ x, y }) => [x - left + hole / 2, bottom - y + hole / 2]);
}

/** How far the farthest of the found places lies from the nearest expected one, once as many were found. */
export function farthestOff(
  found: readonly (readonly number[])[],
  expected: readonly (readonly number[])[],
): number {
  if (found.length !== expected.length) throw new Error(`${found.length} found, ${expected.length} expected`);
  const left = new Set(expected);
  return Math.max(
    ...found.map(([x, y]) => {
      let best: readonly number[] | undefined;
      let least = Infinity;
      for (const one of left) {
        const away = Math.hypot(one[0]! - x!, one[1]! - y!);
        if (away < least) [best, least] = [one, away];
      }
      left.delete(best!);
      return least;
    }),
  );
}
