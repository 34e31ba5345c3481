import { describe, expect, it } from 'vitest';
import type { GreyPicture } from '#base/picture/grey.ts';
import { seededRandom } from '#base/random.ts';
import type { RoundHole } from '#craft/trace/lines/line.ts';
import { findLines } from '#craft/trace/lines.ts';
import { edging, fine, jitter, type KnownPattern, round, tape } from '../../support/patterns/index.ts';
import { greyOf, renderScan, type Scan, type ScanOptions } from '../../support/scan/index.ts';

interface Case {
  readonly name: string;
  readonly known: KnownPattern;
  readonly scan: ScanOptions;
  /** Reached on this picture with some room to spare. */
  readonly precision: number;
  readonly recall: number;
}

const shaken = (known: KnownPattern): KnownPattern => jitter(known, 0.15, seededRandom(9));

const cases: readonly Case[] = [
  {
    name: 'a printed edging',
    known: edging(),
    scan: { skew: -1.5, title: 'Sampler' },
    precision: 0.98,
    recall: 0.98,
  },
  {
    name: 'a copied edging at 57 degrees',
    known: edging({ angle: 57, spacing: 4 }),
    scan: { style: 'photocopy', skew: 2.5, scaleX: 1.01 },
    precision: 0.98,
    recall: 0.95,
  },
  {
    name: 'an old pricked card',
    known: shaken(edging({ angle: 52 })),
    scan: { style: 'card', skew: 2 },
    precision: 0.97,
    recall: 0.92,
  },
  {
    name: 'a tape under blue film',
    known: tape(),
    scan: { film: 'blue' },
    precision: 0.95,
    recall: 0.98,
  },
  {
    name: 'a copied mat',
    known: round(),
    scan: { style: 'photocopy', dot: 0.55 },
    precision: 0.92,
    recall: 0.96,
  },
  {
    name: 'a fine piece at 600 dpi under grey film',
    known: fine({ seed: 5, groundLines: 0.5, tint: '#cccccc' }),
    scan: { dpi: 600, dot: 0.45, line: 0.12, film: 'grey' },
    precision: 0.97,
    recall: 0.97,
  },
];

describe('the working lines that join pins', () => {
  it.each(cases)('are found on $name', ({ known, scan: options, precision, recall }) => {
    const scan = renderScan(known, options, seededRandom(11));
    const lines = findLines(greyOf(scan), holesOf(scan, 0.5));
    const truth = new Set(scan.truth.lines.map(([a, b]) => `${Math.min(a, b)} ${Math.max(a, b)}`));
    // A plait is drawn as two lines close together, and may be told as one.
    const plaits = plaitsOf(known);
    const found = lines.map(({ from, to }) => `${from} ${to}`).filter((key) => !plaits.has(key));
    const right = found.filter((key) => truth.has(key)).length;
    expect(right / found.length).toBeGreaterThanOrEqual(precision);
    expect(right / truth.size).toBeGreaterThanOrEqual(recall);
    for (const { from, to, strength } of lines) {
      expect(from).toBeLessThan(to);
      expect(strength).toBeGreaterThan(0);
      expect(strength).toBeLessThanOrEqual(1);
    }
    expect(new Set(lines.map(({ from, to }) => `${from} ${to}`)).size).toBe(lines.length);
  });

  it('are not seen in a thick line, nor on bare paper', () => {
    const page = paper(200, 120);
    for (let row = 40; row < 52; row++) page.grey.fill(20, row * 200 + 20, row * 200 + 180);
    const holes = [
      [20, 46],
      [100, 46],
      [180, 46],
      [20, 100],
      [100, 100],
      [180, 100],
    ].map(([column, row]): RoundHole => ({ column: column!, row: row!, diameter: 7 }));
    expect(findLines(page, holes)).toEqual([]);
  });

  it('are told piece by piece where they run through several pins, also where all pins lie on one line', () => {
    const page = paper(240, 60);
    for (let row = 29; row < 32; row++) page.grey.fill(40, row * 240 + 20, row * 240 + 221);
    const holes = [120, 20, 220, 70, 170].map((column): RoundHole => ({ column, row: 30, diameter: 7 }));
    for (const { column } of holes)
      for (let row = 27; row < 34; row++) page.grey.fill(30, row * 240 + column - 3, row * 240 + column + 4);
    const pairs = findLines(page, holes).map(({ from, to }) => [from, to]);
    expect(pairs).toEqual([
      [0, 3],
      [0, 4],
      [1, 3],
      [2, 4],
    ]);
  });

  it('are none where there are no two holes', () => {
    expect(findLines(paper(50, 50), [])).toEqual([]);
    expect(findLines(paper(50, 50), [{ column: 20, row: 20, diameter: 7 }])).toEqual([]);
  });
});

function holesOf(scan: Scan, off: number): RoundHole[] {
  const random = seededRandom(3);
  return scan.truth.holes.map(({ column, row, diameter }) => ({
    column: column + off * (2 * random() - 1),
    row: row + off * (2 * random() - 1),
    diameter: (diameter * scan.truth.dpi) / 25.4,
  }));
}

function plaitsOf({ pattern }: KnownPattern): Set<string> {
  const index = new Map(pattern.pins.map((pin, k) => [pin.id, k]));
  const pairs = pattern.marks.flatMap((mark) => {
    if (mark.kind !== 'plait') return [];
    const path = mark.path.map((anchor) => ('pin' in anchor ? index.get(anchor.pin)! : -1));
    return path.slice(1).map((b, k) => `${Math.min(path[k]!, b)} ${Math.max(path[k]!, b)}`);
  });
  return new Set(pairs);
}

const paper = (width: number, height: number): GreyPicture => ({
  width,
  height,
  grey: new Uint8Array(width * height).fill(235),
});
