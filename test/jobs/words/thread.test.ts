import { describe, expect, test } from 'vitest';
import { parseYarn } from '#base/units/yarn/parse.ts';
import { threadListTroubleInWords } from '#jobs/words/threads.ts';
import { yarnTroubleInWords } from '#jobs/words/yarn.ts';
import { readThreadList } from '#pattern/threads/thread-list.ts';

const labels = [
  '',
  'Ne',
  '80/2',
  'fine cotton \u202e',
  'Nm 80 Ne',
  '1.234,5 tex',
  '150/48 dtex',
  'ticket 120',
  'metric ticket 120/2',
  '80// Ne',
  'Ne 80/5000/2',
  '0.001 tex',
  '34 tex x 2; R120 tex',
];

function sentence(words: string): void {
  expect(words).toMatch(/^[A-Z"].*\.$/s);
  expect(words).not.toMatch(/undefined|\[object|NaN|\n|\u202e/);
  expect(words.length).toBeLessThan(420);
}

describe('a label that is not understood', () => {
  test.each(labels)('"%s" has a sentence', (label) => {
    const yarn = parseYarn(label);
    sentence(yarn.ok ? '' : yarnTroubleInWords(yarn.trouble));
  });

  test('each kind of trouble is among them', () => {
    const kinds = labels.map((label) => parseYarn(label)).map((yarn) => (yarn.ok ? '' : yarn.trouble.kind));
    expect(new Set(kinds).size).toBe(13);
  });

  test('says what would work', () => {
    const yarn = parseYarn('80/2');
    expect(yarn.ok ? '' : yarnTroubleInWords(yarn.trouble)).toContain('"80/2 NeL", "80/2 Ne" or "80/2 Nm"');
  });
});

describe('a list that cannot be used', () => {
  const one = (thread: object): string =>
    JSON.stringify({ format: 'pinlight-threads', version: 1, threads: [thread, thread] });
  test.each([
    '{',
    '{}',
    '{"format":"other"}',
    one({ name: 'a', fibre: 'cotton' }),
    one({ name: 'a', fibre: 'cotton', count: '80/2' }),
    one({ name: 'a', fibre: 'straw', wrapsPerCm: 30 }),
    one({ name: 'a', fibre: 'cotton', wrapsPerCm: 30 }),
  ])('%s', (text) => {
    const read = readThreadList(text);
    sentence(read.ok ? '' : threadListTroubleInWords(read.trouble));
  });
});
