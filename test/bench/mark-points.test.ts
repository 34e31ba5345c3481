import { describe, expect, it } from 'vitest';
import type { Anchor, Mark } from '#pattern/pattern.ts';
import { pointNames, refusePoint, withPoint } from '../../src/bench/stages/mark/points.ts';

const [a, b, c]: Anchor[] = [{ pin: 'a' }, { pin: 'b' }, { pin: 'c' }];
const free: Anchor = { x: 3, y: 4 };
const line: Mark = { id: 'm1', kind: 'line', from: a!, to: b! };
const plait: Mark = { id: 'm2', kind: 'plait', path: [a!, b!, c!] };
const ring: Mark = { id: 'm3', kind: 'gimp', path: [a!, b!, c!], closed: true, width: 1 };
const picot: Mark = { id: 'm4', kind: 'picot', at: a!, side: 'left' };
const arrow: Mark = { id: 'm5', kind: 'arrow', from: a!, to: b! };

const refused = (mark: Mark, point: number, to: Anchor, others: readonly Mark[] = []) =>
  refusePoint(withPoint(mark, point, to), point, [mark, ...others]) !== null;

describe('a point of a marking', () => {
  it('has a name that tells it from the others', () => {
    expect(pointNames(line)).toEqual(['its beginning', 'its end']);
    expect(pointNames(arrow)).toEqual(['its tail', 'its head']);
    expect(pointNames(plait)).toEqual(['its beginning', 'point 2', 'its end']);
    expect(pointNames(ring)).toEqual(['point 1', 'point 2', 'point 3']);
    expect(pointNames(picot)).toEqual(['it']);
  });

  it('is moved alone, also where two of them lie at one pin', () => {
    const twice: Mark = { ...ring, path: [a!, b!, a!, c!], closed: false };
    expect(withPoint(twice, 2, free)).toEqual({ ...twice, path: [a, b, free, c] });
    expect(withPoint(arrow, 1, free)).toEqual({ ...arrow, to: free });
  });

  it('keeps to pins where its kind asks for them', () => {
    expect(refused(line, 0, free)).toBe(true);
    expect(refused(picot, 0, free)).toBe(true);
    expect(refused(plait, 2, free)).toBe(true);
    expect(refused(plait, 1, free)).toBe(false);
    expect(refused(ring, 0, free)).toBe(false);
    expect(refused(arrow, 0, free)).toBe(false);
  });

  it('does not come to lie on the one beside it, round a ring too', () => {
    expect(refused(line, 0, b!)).toBe(true);
    expect(refused(plait, 1, c!)).toBe(true);
    expect(refused(plait, 0, c!)).toBe(false);
    expect(refused(ring, 2, a!)).toBe(true);
  });

  it('makes no working line twice, whichever way round', () => {
    expect(refused(line, 0, c!, [{ ...line, id: 'm9', from: b!, to: c! }])).toBe(true);
    expect(refused(line, 0, c!)).toBe(false);
  });
});
