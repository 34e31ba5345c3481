import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readThreadList } from '#pattern/threads/thread-list.ts';

const list = (threads: unknown, more: object = {}): string =>
  JSON.stringify({ format: 'pinlight-threads', version: 1, threads, ...more });

const kindOf = (text: string): string => {
  const read = readThreadList(text);
  return read.ok ? 'fine' : read.trouble.kind === 'bad-file' ? read.trouble.trouble.kind : read.trouble.kind;
};

test('the list among the examples can be read', () => {
  const text = readFileSync(new URL('../../../examples/threads.json', import.meta.url), 'utf8');
  const read = readThreadList(text);
  expect(read.ok && read.value.length).toBe(8);
});

test('a measured thread needs no label', () => {
  expect(kindOf(list([{ name: 'a', fibre: 'cotton', wrapsPerCm: 30 }]))).toBe('fine');
});

describe('lists that cannot be used', () => {
  test.each<[string, string]>([
    ['', 'not-json'],
    ['[', 'not-json'],
    ['{}', 'not-threads'],
    ['[]', 'not-threads'],
    ['{"format":"pinlight","version":2,"pins":[]}', 'not-threads'],
    [list([], { version: 2 }), 'newer-version'],
    [list([], { colour: 'red' }), 'wrong-shape'],
    [list([{ name: 'a', fibre: 'straw', wrapsPerCm: 30 }]), 'wrong-shape'],
    [list([{ name: '', fibre: 'cotton', wrapsPerCm: 30 }]), 'wrong-shape'],
    [list([{ name: 'a', fibre: 'cotton', wrapsPerCm: 0 }]), 'wrong-shape'],
    [list([{ name: 'a', fibre: 'cotton' }]), 'no-thickness'],
    [list([{ name: 'a', fibre: 'cotton', count: '80/2' }]), 'bad-count'],
    [list(Array.from({ length: 2 }, () => ({ name: 'a', fibre: 'cotton', wrapsPerCm: 30 }))), 'same-name'],
    [
      list(Array.from({ length: 2001 }, (_, i) => ({ name: `${i}`, fibre: 'silk', wrapsPerCm: 9 }))),
      'too-many',
    ],
    [`${' '.repeat(1_000_001)}`, 'too-large'],
  ])('%.60s: %s', (text, kind) => {
    expect(kindOf(text)).toBe(kind);
  });
});
