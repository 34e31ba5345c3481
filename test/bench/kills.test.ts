import { expect, test } from 'vitest';
import { EditedPattern } from '../support/bench/edited-pattern.ts';
import { killAndReopen } from '../support/bench/kills.ts';
import { startBench } from '../support/bench/serve.ts';

const SEED = 20_261_129;

test('a browser that is killed five times in the midst of the work loses nothing that was shown as saved', async () => {
  const bench = await startBench();
  try {
    const { edits, ...report } = await killAndReopen(bench.address, 5, SEED);
    expect(edits).toBeGreaterThan(20);
    expect(report).toMatchObject({ kills: 5, savedLost: 0, oldLost: 0, broken: 0 });
  } finally {
    await bench.close();
  }
}, 120_000);

test('the model by which it is judged tells a lost edit and a pattern that never was', () => {
  const pattern = new EditedPattern(['0 0']);
  for (const [place, time] of [
    ['1 1', 100],
    ['2 2', 200],
  ] as const) {
    pattern.attempt('add');
    pattern.made(place, time);
    pattern.saved();
  }
  expect([pattern.shownSaved, pattern.lastBefore(150)]).toEqual([2, 1]);
  expect(pattern.resumeAt(['0 0', '1 1', '2 2'])).toBe(2);
  expect(pattern.resumeAt(['0 0'])).toBe(0);
  expect(pattern.resumeAt(['0 0', '2 2'])).toBeNull();
});
