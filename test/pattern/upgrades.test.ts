import { describe, expect, test } from 'vitest';
import { readPattern } from '#pattern/file/read.ts';
import { VERSION } from '#pattern/file/schema.ts';
import { upgrade, upgrades } from '#pattern/file/upgrades.ts';
import { writePattern } from '#pattern/file/write.ts';

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

describe('version 1, which knew no recipe', () => {
  // As version 0.1.0 wrote it, letter by letter.
  const old = [
    '{',
    '"format":"pinlight-pattern",',
    '"version":1,',
    '"unit":"mm",',
    '"about":{"name":"Narrow edging"},',
    '"pins":[',
    '{"id":"p1","x":12.5,"y":30},',
    '{"id":"p2","x":12.5,"y":34}',
    '],',
    '"runs":[',
    '{"id":"footside","pins":["p1","p2"],"shape":"line","closed":false,"role":"footside","even":true}',
    '],',
    '"scale":{"from":"given","dpi":600}',
    '}',
    '',
  ].join('\n');
  test('gets the new mark, and nothing else changes', () => {
    expect(upgrades[1]!(JSON.parse(old))).toEqual({ ...JSON.parse(old), version: 2 });
  });
  test('opens, and is saved as version 2 with everything in it', () => {
    const read = readPattern(old);
    if (!read.ok) throw new Error(JSON.stringify(read.trouble));
    expect(writePattern(read.value)).toBe(old.replace('"version":1', '"version":2'));
  });
});
