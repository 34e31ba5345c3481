import { describe, expect, test } from 'vitest';
import type { FileScale } from '#jobs/picture/picture.ts';
import { chooseScale, type ScaleGiven } from '#jobs/trace/scale.ts';

const NONE: FileScale = { kind: 'none' };
const STATED: FileScale = { kind: 'stated', dpi: 300 };
const UNEQUAL: FileScale = { kind: 'unequal', across: 204, down: 98 };

const span = (columns: number, rows: number, length: number): ScaleGiven => ({
  kind: 'span',
  from: { column: 10, row: 20 },
  to: { column: 10 + columns, row: 20 + rows },
  length,
});

describe('chooseScale', () => {
  test.each<[string, FileScale, ScaleGiven | null, object]>([
    ['what the file states', STATED, null, { from: 'file', dpi: 300 }],
    ['what is given counts first', STATED, { kind: 'dpi', dpi: 600 }, { from: 'given', dpi: 600 }],
    // 3-4-5: 1000 pixels for 84.667 mm are 300 an inch.
    ['a slanting span', NONE, span(600, 800, 25.4 / 0.3), { from: 'span', dpi: 300 }],
    ['a span over dots that are not square', UNEQUAL, span(1000, 0, 100), { from: 'span', dpi: 254 }],
    ['nothing', NONE, null, { from: 'none' }],
    ['what nobody measured', { kind: 'doubtful', dpi: 72, why: 'default' }, null, { from: 'none' }],
  ])('%s', (_, file, given, wanted) => {
    const chosen = chooseScale(file, given);
    if (!chosen.ok) throw new Error(chosen.trouble.kind);
    const { dpi, ...rest } = { dpi: undefined, length: undefined, ...chosen.value };
    expect({ ...rest, ...(dpi !== undefined && { dpi: Number((dpi as number).toFixed(9)) }) }).toMatchObject(
      wanted,
    );
  });

  test.each<[string, FileScale, ScaleGiven | null, string]>([
    ['dots that are not square', UNEQUAL, null, 'unequal-dots'],
    ['a span too short to measure by', NONE, span(30, 40, 5), 'span-too-short'],
    ['a span that nobody can have measured', NONE, span(1000, 0, 0.01), 'absurd-scale'],
    ['a dpi far off', NONE, { kind: 'dpi', dpi: 2 }, 'absurd-scale'],
  ])('%s: refused', (_, file, given, kind) => {
    expect(chooseScale(file, given)).toMatchObject({ ok: false, trouble: { kind } });
  });
});
