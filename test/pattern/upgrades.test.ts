import { describe, expect, test } from 'vitest';
import { readPattern } from '#pattern/file/read.ts';
import { VERSION } from '#pattern/file/schema.ts';
import { upgrade, upgrades } from '#pattern/file/upgrades.ts';

test('there is one upgrade for every version before the present one', () => {
  expect(upgrades.length).toBe(VERSION);
});

describe('version 0, the bare file', () => {
  const old = '{ "unit": "mm", "pins": [ { "x": 12.5, "y": 30 }, { "id": "edge", "x": 14, "y": 30 } ] }';
  test('gets its mark, and nothing else changes', () => {
    expect(upgrades[0]!(JSON.parse(old))).toEqual({
      format: 'pinlight-pattern',
      version: 1,
      unit: 'mm',
      pins: [
        { x: 12.5, y: 30 },
        { id: 'edge', x: 14, y: 30 },
      ],
    });
  });
  test('opens as the same file of version 1 does', () => {
    const marked = JSON.stringify({ format: 'pinlight-pattern', version: 1, ...JSON.parse(old) });
    expect(readPattern(old)).toEqual(readPattern(marked));
  });
  test('is not touched itself', () => {
    const file = Object.freeze({ pins: Object.freeze([]) });
    expect(upgrade(file).ok).toBe(true);
    expect(file).toEqual({ pins: [] });
  });
});
