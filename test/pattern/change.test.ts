import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '#base/random.ts';
import { changeBetween } from '#pattern/change/between.ts';
import { applyChange, type Change, misfit } from '#pattern/change/change.ts';
import { readChange, writeChange } from '#pattern/change/file.ts';
import { joinChanges } from '#pattern/change/join.ts';
import { removePins } from '#pattern/change/remove-pins.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { arbitraryPattern } from '../support/arbitrary-pattern.ts';
import { checkChangeLaws, deepFreeze } from '../support/change-laws.ts';

const row = patternFromPins([0, 1, 2, 3, 4].map((x) => ({ x, y: 0 })));
/** Pins as letters: 'abc' is three pins in that order; a capital stands lower down. */
const word = (letters: string): Pattern => ({
  ...row,
  pins: [...letters].map((letter) => ({
    id: letter.toLowerCase(),
    x: letter.toLowerCase().charCodeAt(0),
    y: letter === letter.toUpperCase() ? 1 : 0,
  })),
});
const shown = (pattern: Pattern) => pattern.pins.map(({ id, y }) => (y ? id.toUpperCase() : id)).join('');

describe('one after the other', () => {
  test.each([
    ['abc', 'abc'],
    ['abc', 'aBc'],
    ['abc', 'ac'],
    ['abc', 'abxc'],
    ['abc', 'xabcy'],
    ['abc', ''],
    ['', 'abc'],
    ['abcdef', 'fabcde'],
    ['abcdef', 'fedcba'],
    ['abc', 'aBc', 'abc'],
    ['abc', 'abxc', 'abc'],
    ['abc', 'abxc', 'abXc'],
    ['abc', 'ac', 'abc'],
    ['abc', 'aBc', 'ac'],
    ['abc', 'ac', 'aBc', 'c'],
    ['abcdef', 'acexyz', 'yaxCe', 'aCqe'],
    ['abcd', 'bcd', 'cdb', 'cdba'],
  ])('%s', (...words) => {
    const states = words.map(word);
    const changes = states.slice(1).map((state, i) => changeBetween(states[i]!, state));
    checkChangeLaws(states[0]!, changes, states.at(-1));
    expect(shown(changes.reduce(applyChange, states[0]!))).toBe(words.at(-1));
  });

  test('as few records as can be move', () => {
    const change = changeBetween(word('abcdef'), word('fabcde'));
    expect(change.pins).toEqual({
      added: [{ index: 0, record: word('f').pins[0] }],
      updated: [],
      removed: [{ index: 5, record: word('f').pins[0] }],
    });
  });

  test('what does not change is absent', () => {
    expect(changeBetween(row, row)).toEqual({});
    expect(joinChanges(changeBetween(word('ab'), word('aB')), changeBetween(word('aB'), word('ab')))).toEqual(
      {},
    );
  });
});

describe('random edits', () => {
  test('from any pattern to any other, by way of two more (seed 1959)', () => {
    const four = fc.tuple(...[1, 2, 3, 4].map(() => arbitraryPattern({ fine: true })));
    fc.assert(
      fc.property(four, (states) => {
        const changes = states.slice(1).map((state, i) => changeBetween(states[i]!, state));
        checkChangeLaws(states[0]!, changes, states[3]);
      }),
      { seed: 1959, numRuns: 150 },
    );
  });

  test('many small edits of one list, against working it out afresh (seeds 1 to 40)', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const random = seededRandom(seed);
      const pick = (below: number) => Math.floor(random() * below);
      const states = [word('abcdefghijkl')];
      const letters = 'abcdefghijklmnopqrstuvwxyz';
      for (let step = 0; step < 12; step++) {
        let text = shown(states.at(-1)!);
        for (let edits = pick(3) + 1; edits > 0; edits--) {
          const at = pick(text.length + 1);
          const free = [...letters].filter((letter) => !text.toLowerCase().includes(letter));
          const kind = pick(3);
          if (kind === 0 && free.length > 0)
            text = text.slice(0, at) + free[pick(free.length)] + text.slice(at);
          else if (kind === 1) text = text.slice(0, at) + text.slice(at + 1);
          else text = text.slice(0, at) + text.slice(at, at + 1).toUpperCase() + text.slice(at + 1);
        }
        states.push(word(text));
      }
      const changes = states.slice(1).map((state, i) => changeBetween(states[i]!, state));
      checkChangeLaws(states[0]!, changes, states.at(-1));
    }
  });

  test('removing pins takes along, explicitly, all that spoke of them (seed 52)', () => {
    const cases = arbitraryPattern().chain((pattern) =>
      fc.tuple(fc.constant(pattern), fc.subarray(pattern.pins.map(({ id }) => id))),
    );
    fc.assert(
      fc.property(cases, ([pattern, ids]) => {
        deepFreeze(pattern);
        const change = removePins(pattern, ids);
        checkChangeLaws(pattern, [change]);
        const after = applyChange(pattern, change);
        expect(after.pins).toEqual(pattern.pins.filter(({ id }) => !ids.includes(id)));
        expect(after.marks.length).toBe(pattern.marks.length);
        expect(after.areas.length).toBe(pattern.areas.length);
      }),
      { seed: 52, numRuns: 150 },
    );
  });
});

test('marks of a removed pin stay where they were drawn, runs close up or go', () => {
  const pattern: Pattern = {
    ...row,
    runs: [
      { id: 'r1', pins: ['p1', 'p2', 'p3'], shape: 'line', closed: false, role: 'footside', even: true },
      { id: 'r2', pins: ['p2', 'p4'], shape: 'line', closed: false, role: 'other', even: false },
    ],
    marks: [{ id: 'm1', kind: 'line', from: { pin: 'p1' }, to: { pin: 'p2' } }],
  };
  const after = applyChange(pattern, removePins(pattern, ['p2']));
  expect(after.runs).toEqual([{ ...pattern.runs[0], pins: ['p1', 'p3'] }]);
  expect(after.marks).toEqual([{ id: 'm1', kind: 'line', from: { pin: 'p1' }, to: { x: 1, y: 0 } }]);
  expect(() => removePins(pattern, ['p9'])).toThrow(RangeError);
});

describe('a change that was not made for this pattern', () => {
  const moved = { ...row.pins[1]!, y: 5 };
  const cases: [string, Change, object][] = [
    [
      'other from',
      { pins: { added: [], removed: [], updated: [[moved, row.pins[1]!]] } },
      { at: 'pins', record: 'p2' },
    ],
    [
      'other id',
      { pins: { added: [], removed: [], updated: [[row.pins[0]!, { ...moved }]] } },
      { at: 'pins', record: 'p1' },
    ],
    [
      'other place',
      { pins: { added: [], updated: [], removed: [{ index: 0, record: row.pins[1]! }] } },
      { at: 'pins', record: 'p2' },
    ],
    [
      'already there',
      { pins: { updated: [], removed: [], added: [{ index: 0, record: row.pins[1]! }] } },
      { at: 'pins', record: 'p2' },
    ],
    [
      'too far out',
      { pins: { updated: [], removed: [], added: [{ index: 6, record: { ...moved, id: 'n' } }] } },
      { at: 'pins', record: 'n' },
    ],
    ['other part', { scale: [{ from: 'drafted' }, { from: 'none' }] }, { at: 'scale' }],
  ];
  test.each(cases)('%s', (_name, change, where) => {
    expect(misfit(row, change)).toEqual({ kind: 'misfit', ...where });
    expect(() => applyChange(row, change)).toThrow(RangeError);
  });
});

describe('a saved change', () => {
  const saved = (edit: object) => JSON.stringify({ format: 'pinlight-change', version: 1, ...edit });
  const troubleOf = (text: string) => {
    const read = readChange(text);
    return read.ok ? null : read.trouble;
  };
  test('keeps every digit', () => {
    const change = changeBetween(row, { ...row, pins: [{ id: 'p1', x: 1 / 3, y: Math.PI }] });
    expect(readChange(writeChange(change))).toEqual({ ok: true, value: change });
  });
  test('is checked as strictly as a pattern', () => {
    const none = { added: [], updated: [], removed: [] };
    expect(troubleOf('{')).toMatchObject({ kind: 'not-json' });
    expect(troubleOf(saved({ pegs: none }))).toMatchObject({ kind: 'wrong-shape', reason: { key: 'pegs' } });
    expect(
      troubleOf(saved({ pins: { ...none, added: [{ index: 0, record: { x: 1, y: 1 } }] } })),
    ).toMatchObject({
      kind: 'wrong-shape',
      path: ['pins', 'added', 0, 'record', 'id'],
      reason: { kind: 'missing' },
    });
    expect(
      troubleOf(saved({ pins: { ...none, removed: [{ index: -1, record: row.pins[0] }] } })),
    ).toMatchObject({
      path: ['pins', 'removed', 0, 'index'],
    });
    expect(troubleOf(saved({ unit: ['mm', 'inch'] }))).toMatchObject({ path: ['unit', 1] });
    expect(troubleOf(saved({ paper: [null, { entry: 'a' }] }))).toMatchObject({
      path: ['paper', 1, 'sha256'],
    });
    expect(troubleOf('{"pins":[]}')).toMatchObject({ path: ['format'], reason: { kind: 'missing' } });
    expect(troubleOf(saved({ version: 2 }))).toEqual({ kind: 'newer-version', version: 2, newest: 1 });
    expect(troubleOf(saved({ version: '1' }))).toMatchObject({ path: ['version'] });
    expect(troubleOf(saved({ __proto__x: 1 }))).not.toBeNull();
    expect(troubleOf('{"format":"pinlight-change","version":1,"__proto__":{}}')).not.toBeNull();
  });
});
