import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { readPattern } from '#pattern/file/read.ts';

const open = (file: unknown) => readPattern(JSON.stringify(file));

describe('the smallest files', () => {
  test('pins alone', () => {
    expect(readPattern('{"pins":[{"x":12.5,"y":30}]}')).toEqual({
      ok: true,
      value: {
        unit: 'mm',
        about: {},
        pins: [{ id: 'p1', x: 12.5, y: 30 }],
        runs: [],
        marks: [],
        areas: [],
        sizes: {},
        scale: { from: 'none' },
      },
    });
  });

  test('pins and unit', () => {
    const read = open({
      unit: 'mm',
      pins: [
        { x: 1, y: 2 },
        { x: 3, y: 4 },
      ],
    });
    expect(read.ok && read.value.pins.map((pin) => pin.id)).toEqual(['p1', 'p2']);
  });

  test('no pins at all, and a byte order mark', () => {
    expect(readPattern('\uFEFF{"pins":[]}').ok).toBe(true);
  });
});

test('ids are given by place and never clash with ids that are there', () => {
  const at = { x: 0, y: 0 };
  const read = open({ pins: [at, { id: 'p1', ...at }, at, { id: 'p3-2', ...at }, { id: 'p3', ...at }] });
  expect(read.ok && read.value.pins.map((pin) => pin.id)).toEqual(['p1-2', 'p1', 'p3-3', 'p3-2', 'p3']);
});

const trouble = (file: unknown) => {
  const read = open(file);
  if (read.ok) throw new Error('opened');
  return read.trouble;
};
const pins = [
  { x: 0, y: 0 },
  { x: 1, y: 0 },
  { x: 2, y: 0 },
];
const shape = (path: readonly (string | number)[], reason: object) => ({ kind: 'wrong-shape', path, reason });

describe('each trouble is named with its place', () => {
  test.each<[string, unknown, object]>([
    ['a list', [], { kind: 'not-a-pattern', format: null }],
    ['another format', { format: 'recipe', pins }, { kind: 'not-a-pattern', format: '"recipe"' }],
    [
      'newer',
      { format: 'pinlight-pattern', version: 9, news: 1 },
      { kind: 'newer-version', version: 9, newest: 2 },
    ],
    ['version of no kind', { version: 'two', pins }, { kind: 'unknown-version', version: '"two"' }],
    ['version 0 said out loud', { version: 0, pins }, { kind: 'unknown-version', version: '0' }],
    ['no pins', {}, shape(['pins'], { kind: 'missing' })],
    ['no y', { pins: [{ x: 1 }] }, shape(['pins', 0, 'y'], { kind: 'missing' })],
    [
      'x as text',
      { pins: [{ x: '1', y: 1 }] },
      shape(['pins', 0, 'x'], { kind: 'wrong-type', expected: 'number', found: 'string' }),
    ],
    ['null', { pins: null }, shape(['pins'], { kind: 'wrong-type', expected: 'array', found: 'null' })],
    ['unknown key', { pins: [{ x: 1, y: 1, z: 1 }] }, shape(['pins', 0], { kind: 'unknown-key', key: 'z' })],
    ['unknown key at the top', { pins, pegs: [] }, shape([], { kind: 'unknown-key', key: 'pegs' })],
    [
      'far away',
      { pins: [{ x: 100001, y: 1 }] },
      shape(['pins', 0, 'x'], { kind: 'too-big', maximum: 100000 }),
    ],
    [
      'bad id',
      { pins: [{ id: '__proto__', x: 1, y: 1 }] },
      shape(['pins', 0, 'id'], { kind: 'bad-text', wanted: 'id' }),
    ],
    [
      'long name',
      { pins, about: { name: 'x'.repeat(1001) } },
      shape(['about', 'name'], { kind: 'text-too-long', maximum: 1000 }),
    ],
    ['unit', { unit: 'inch', pins }, shape(['unit'], { kind: 'not-one-of', allowed: ['mm', 'px'] })],
    [
      'kind of mark',
      { pins, marks: [{ kind: 'star' }] },
      shape(['marks', 0, 'kind'], {
        kind: 'not-one-of',
        allowed: ['line', 'gimp', 'plait', 'picot', 'arrow', 'number', 'text'],
      }),
    ],
    ['no kind of mark', { pins, marks: [{}] }, shape(['marks', 0, 'kind'], { kind: 'missing' })],
    [
      'anchor',
      { pins, marks: [{ kind: 'line', from: { pin: 'p1' }, to: 'p2' }] },
      shape(['marks', 0, 'to'], { kind: 'not-an-anchor' }),
    ],
    [
      'short run',
      { pins, runs: [{ pins: ['p1'], shape: 'line' }] },
      shape(['runs', 0, 'pins'], { kind: 'too-few', minimum: 2 }),
    ],
    [
      'same id twice',
      {
        pins: [
          { id: 'a', x: 0, y: 0 },
          { id: 'b', x: 0, y: 0 },
          { id: 'a', x: 0, y: 0 },
        ],
      },
      { kind: 'duplicate-id', list: 'pins', id: 'a', first: 0, second: 2 },
    ],
    [
      'run of no pin',
      { pins, runs: [{ pins: ['p1', 'p9'], shape: 'line' }] },
      { kind: 'dangling-reference', path: ['runs', 0, 'pins', 1], pin: 'p9' },
    ],
    [
      'mark at no pin',
      { pins, marks: [{ kind: 'line', from: { pin: 'p1' }, to: { pin: 'q' } }] },
      { kind: 'dangling-reference', path: ['marks', 0, 'to', 'pin'], pin: 'q' },
    ],
    [
      'area at no pin',
      { pins, areas: [{ outline: [{ pin: 'p1' }, { pin: 'p2' }, { pin: 'q' }] }] },
      { kind: 'dangling-reference', path: ['areas', 0, 'outline', 2, 'pin'], pin: 'q' },
    ],
    [
      'repeat of no length',
      { pins, repeat: { step: { x: 0, y: 0 } } },
      shape(['repeat', 'step'], { kind: 'zero-step' }),
    ],
  ])('%s', (_name, file, expected) => {
    expect(trouble(file)).toEqual(expected);
  });

  test('numbers that no computer can hold', () => {
    const kind = (text: string) => {
      const read = readPattern(text);
      return read.ok ? 'opened' : read.trouble;
    };
    expect(kind('{"pins":[{"x":1e999,"y":0}]}')).toEqual({ kind: 'not-finite', path: ['pins', 0, 'x'] });
    expect(
      kind('{"pins":[],"areas":[{"outline":[{"x":0,"y":0},{"x":-1e999,"y":0},{"x":0,"y":1}]}]}'),
    ).toEqual({ kind: 'not-finite', path: ['areas', 0, 'outline', 1, 'x'] });
    expect(kind('{"pins":[{"x":NaN,"y":0}]}')).toEqual({ kind: 'not-json', line: 1, column: 15, found: 'N' });
    expect(kind('{"pins":[\n  {"x":1,"y":0},\n]}')).toEqual({
      kind: 'not-json',
      line: 3,
      column: 1,
      found: ']',
    });
    expect(kind('{"pins":[')).toEqual({ kind: 'not-json', line: 1, column: 10, found: null });
  });
});

test.each([
  ['one pin', [{ x: 0, y: 0 }]],
  [
    'pins on top of each other',
    [
      { x: 1, y: 1 },
      { x: 1, y: 1 },
      { x: 1, y: 1 },
    ],
  ],
  [
    'pins on one line',
    [
      { x: 0, y: 0 },
      { x: 1, y: 1 },
      { x: 2, y: 2 },
    ],
  ],
  [
    'pins at the ends of the world',
    [
      { x: -100_000, y: 100_000 },
      { x: 100_000, y: -100_000 },
    ],
  ],
])('%s open in their order', (_name, places) => {
  const read = open({ pins: places });
  expect(read.ok && read.value.pins.map(({ x, y }) => ({ x, y }))).toEqual(places);
});

describe('what is offered in bad faith', () => {
  test('a key that would change the prototype is refused and changes nothing', () => {
    for (const text of [
      '{"pins":[],"__proto__":{"polluted":1}}',
      '{"pins":[{"x":1,"y":1,"__proto__":{"polluted":1}}]}',
      '{"pins":[],"about":{"constructor":{"prototype":{"polluted":1}}}}',
      '{"pins":[],"paper":{"entry":"a.jpg","sha256":"","width":1,"height":1,"toPattern":{},"stood":{"__proto__":{"x":1,"y":1}}}}',
    ]) {
      expect(readPattern(text).ok).toBe(false);
      expect('polluted' in {}).toBe(false);
    }
  });

  test('nesting that no stack could follow', () => {
    const deep = readPattern('{"pins":'.repeat(1_000_000));
    expect(!deep.ok && deep.trouble).toEqual({
      kind: 'too-large',
      what: 'depth',
      size: 1_000_000,
      limit: 32,
    });
  });

  test('a text of nothing but brackets', () => {
    const many = readPattern(`{"pins":[${'[],'.repeat(6_000_000)}[]]}`);
    expect(!many.ok && many.trouble).toMatchObject({ kind: 'too-large', what: 'values' });
  });

  test('a million pins open, one more does not', () => {
    const file = (count: number) => `{"pins":[${'{"x":1,"y":2},'.repeat(count - 1)}{"x":1,"y":2}]}`;
    const million = readPattern(file(1_000_000));
    expect(million.ok && million.value.pins.length).toBe(1_000_000);
    expect(readPattern(file(1_000_001))).toEqual({
      ok: false,
      trouble: { kind: 'too-many', path: ['pins'], count: 1_000_001, limit: 1_000_000 },
    });
  });

  test('a million faults are as good as one', () => {
    const read = readPattern(`{"pins":[${'{},'.repeat(999_999)}{}]}`);
    expect(!read.ok && read.trouble).toEqual(shape(['pins', 0, 'x'], { kind: 'missing' }));
    const long = readPattern(`{"pins":[],"runs":[{"shape":"line","pins":[${'0,'.repeat(1_000_000)}0]}]}`);
    expect(!long.ok && long.trouble).toMatchObject({ kind: 'too-many', path: ['runs', 0, 'pins'] });
    const stood = readPattern(
      `{"pins":[],"paper":{"entry":"a.jpg","sha256":"${'0'.repeat(64)}","width":1,"height":1,"toPattern":{"a":1,"b":0,"c":0,"d":1,"e":0,"f":0},"stood":{${Array.from({ length: 300_000 }, (_, i) => `"p${i}":0`).join(',')}}}}`,
    );
    expect(!stood.ok && stood.trouble).toMatchObject({ path: ['paper', 'stood', 'p0'] });
  });
});

test('under a policy that lets no code be made at run time, files are read all the same', () => {
  // What a strict content security policy does to `new Function`, for which the schema library then has another way.
  const { Function: engine } = globalThis;
  try {
    z.config({ jitless: true });
    globalThis.Function = class {
      constructor() {
        throw new Error('refused by policy');
      }
    } as unknown as FunctionConstructor;
    expect(open({ pins }).ok).toBe(true);
    expect(trouble({ pins: [{ x: 1 }] })).toEqual(shape(['pins', 0, 'y'], { kind: 'missing' }));
  } finally {
    globalThis.Function = engine;
    z.config({ jitless: false });
  }
});
