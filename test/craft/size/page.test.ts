import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { formatNumber } from '#base/units/format-length.ts';
import { type Fibre, fibres } from '#base/units/yarn/fibre.ts';
import { yarnSystems } from '#base/units/yarn/system.ts';
import { spacingForThread, usualWraps } from '#craft/size/grid.ts';
import { usualPins } from '#craft/size/pins.ts';
import { threadOf } from '#craft/size/thread.ts';

const page = readFileSync(new URL('../../../docs/thread.md', import.meta.url), 'utf8');

const rows = (heading: RegExp): string[][] =>
  (heading.exec(page)?.[1] ?? '')
    .trim()
    .split('\n')
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );

describe('the figures on the page about thread are those of the program', () => {
  const threads = rows(/\| thread \| of .*\n\|[- |]*\n((?:\|.*\n)+)/);

  test('there are some', () => expect(threads.length).toBeGreaterThan(6));

  test.each(threads)('%s of %s', (label, fibre, ...figures) => {
    const thread = threadOf({ name: label, fibre: fibre as Fibre, count: label });
    if (!thread.ok) throw new Error(JSON.stringify(thread.trouble));
    const { tex, compact, wrapped, wrapsPerCm } = thread.value;
    expect(figures).toEqual([
      formatNumber(tex, 1),
      compact.toFixed(3),
      wrapped.toFixed(3),
      wrapsPerCm.toFixed(0),
      spacingForThread(thread.value, usualWraps.torchon).toFixed(1),
    ]);
  });

  test('pins', () => {
    const pins = rows(/\| work \| footside spacing .*\n\|[- |]*\n((?:\|.*\n)+)/);
    expect(pins.map((row) => row[2])).toEqual(usualPins.map(({ pin }) => `${pin.toFixed(2)} mm`));
    expect(pins.map((row) => Number.parseFloat(row[1]!.replace('from ', '')) || 0)).toEqual(
      usualPins.map(({ spacing }) => spacing),
    );
  });

  test('wraps', () => {
    const wraps = rows(/\| kind of lace .*\n\|[- |]*\n((?:\|.*\n)+)/).map((row) =>
      Number(/\d+/.exec(row[1]!)![0]),
    );
    expect(wraps).toEqual(Object.values(usualWraps));
  });

  test('every system and every fibre is named', () => {
    for (const name of [...Object.keys(yarnSystems), ...fibres]) expect(page).toContain(`\`${name}\``);
  });
});
