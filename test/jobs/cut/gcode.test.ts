import { describe, expect, test } from 'vitest';
import { interpret } from '../../support/gcode.ts';
import { cut, expectedCentres, farthestOff, lopsided } from './support.ts';

const pattern = lopsided();
const gcode = (wish: Parameters<typeof cut>[1] = {}): string =>
  cut(pattern, { format: 'gcode', hole: 0.6, kerf: 0, feed: 600, power: 250, ...wish }).files[0]!.text;

describe('G-code as an interpreter of the published words runs it', () => {
  test('each hole is one whole anticlockwise circle round its pin', () => {
    const { moves, end } = interpret(gcode());
    const arcs = moves.filter(({ kind }) => kind === 'arc');
    expect(arcs).toHaveLength(2 * pattern.pins.length);
    const centres = arcs.map(({ centre }) => centre!);
    expect(
      farthestOff(
        centres.filter((_, k) => k % 2 === 0),
        expectedCentres(pattern, 0.6),
      ),
    ).toBeLessThan(0.001);
    for (let k = 0; k < arcs.length; k += 2) {
      const [first, second] = [arcs[k]!, arcs[k + 1]!];
      expect(second.to).toEqual(first.from);
      for (const half of [first, second]) {
        expect(half.anticlockwise).toBe(true);
        expect(Math.hypot(half.from[0] - half.to[0], half.from[1] - half.to[1])).toBeCloseTo(0.6, 3);
        expect([half.feed, half.power]).toEqual([600, 250]);
      }
    }
    expect(end).toEqual({ spindle: 'M5', power: 0 });
  });

  test('burns along cuts and nowhere else', () => {
    for (const { kind, burns, spindle } of interpret(gcode({ card: { margin: 10 } })).moves) {
      expect(burns).toBe(kind !== 'rapid');
      if (burns) expect(spindle).toBe('M4');
    }
  });

  test('begins and ends as machines want it', () => {
    const text = gcode();
    expect(text).toMatch(/^G21\nG90\nG17\nM5 S0\n/);
    expect(text).toMatch(/\nM5 S0\n$/);
    const comments = interpret(text).comments.join('\n');
    for (const word of ['unattended', 'PVC', 'F600', 'S250', 'S max 1000', '$32=1'])
      expect(comments).toContain(word);
  });

  test('lies at 0,0 and above, the outline last', () => {
    const { moves } = interpret(gcode({ card: { margin: 10, tabs: { count: 4, width: 1 } } }));
    const burnt = moves.filter(({ burns }) => burns);
    const xs = burnt.flatMap(({ from, to }) => [from[0], to[0]]);
    const ys = burnt.flatMap(({ from, to }) => [from[1], to[1]]);
    expect([Math.min(...xs), Math.min(...ys)]).toEqual([0, 0]);
    const firstLine = burnt.findIndex(({ kind }) => kind === 'line');
    expect(burnt.slice(firstLine).every(({ kind }) => kind === 'line')).toBe(true);
    // Four tabs of 1 mm are left standing.
    const cutLength = burnt
      .slice(firstLine)
      .reduce((sum, { from, to }) => sum + Math.hypot(to[0] - from[0], to[1] - from[1]), 0);
    // Four quarter circles of 10 mm for corners, drawn as chords within 0.01 mm.
    const round = 2 * (Math.max(...xs) + Math.max(...ys)) - 8 * 10 + 2 * Math.PI * 10;
    expect(Math.abs(cutLength - (round - 4))).toBeLessThan(0.05);
  });

  test('straight lines only, within 0.01 mm of the circle', () => {
    const { moves } = interpret(gcode({ straight: true, hole: 2 }));
    expect(moves.some(({ kind }) => kind === 'arc')).toBe(false);
    const centres = expectedCentres(pattern, 2);
    for (const { kind, from, to } of moves) {
      if (kind !== 'line') continue;
      const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
      const radius = Math.min(
        ...centres.map((centre) => Math.abs(Math.hypot(centre[0] - x, centre[1] - y) - 1)),
      );
      expect(radius).toBeLessThan(0.0101);
    }
  });

  test('a standing beam only where it is asked for, with M3, in steps of 50 ms', () => {
    const { moves } = interpret(gcode({ pierce: 130 }));
    const dwells = moves.filter(({ kind }) => kind === 'dwell');
    expect(
      farthestOff(
        dwells.map(({ to }) => to),
        expectedCentres(pattern, 0.6),
      ),
    ).toBeLessThan(0.001);
    for (const { burns, spindle, dwell } of dwells)
      expect([burns, spindle, dwell]).toEqual([true, 'M3', 0.15]);
    for (const { kind, burns } of moves) if (kind === 'rapid') expect(burns).toBe(false);
    const preset = {
      format: 'pinlight-cutting',
      version: 1,
      name: 'ms',
      gcode: { dwellUnit: 'ms' },
    } as const;
    const inMs = interpret(gcode({ pierce: 130, preset })).moves.filter(({ kind }) => kind === 'dwell');
    expect(new Set(inMs.map(({ dwell }) => dwell))).toEqual(new Set([150]));
  });

  test('targets are named at their places and not burnt', () => {
    const { job } = cut(pattern, { format: 'gcode', hole: 0.6, kerf: 0, ref: true });
    const { comments, moves } = interpret(gcode({ ref: true }));
    const named = comments.flatMap((text) => {
      const [, x, y] = /^Target at X(\S+) Y(\S+)$/.exec(text) ?? [];
      return x === undefined ? [] : [[Number(x), Number(y)] as const];
    });
    expect(named).toHaveLength(4);
    const places = job.targets.map(({ x, y }) => [x, job.card.height - y]);
    expect(farthestOff(named, places as [number, number][])).toBeLessThan(0.001);
    expect(moves.filter(({ burns }) => burns)).toHaveLength(2 * pattern.pins.length);
  });

  test('holes finer than the kerf are points', () => {
    const { moves } = interpret(gcode({ kerf: 0.7 }));
    expect(moves.filter(({ kind }) => kind === 'dwell')).toHaveLength(pattern.pins.length);
  });
});

describe('the interpreter itself refuses', () => {
  test.each([
    ['an unknown word', 'G21 G90 G17\nG33 X1'],
    ['a comment in a comment', 'G21 (a (b) c)'],
    ['a decimal comma', 'G21 G90 G17\nG0 X1,5'],
    ['an exponent', 'G21 G90 G17\nG0 X1e-5'],
    ['an arc whose ends lie on two circles', 'G21 G90 G17\nG0 X1 Y0\nG3 X-1.1 Y0 I-1 J0 F100'],
    ['a move before its units are known', 'G90 G17\nG0 X1'],
    ['a cut without a feed', 'G21 G90 G17\nG1 X1'],
  ])('%s', (_, text) => expect(() => interpret(text)).toThrow());
});
