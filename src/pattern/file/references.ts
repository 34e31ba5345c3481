import { determinant } from '#base/geometry/affine.ts';
import { namedAnchors } from '../anchors.ts';
import type { Pattern } from '../pattern.ts';
import type { ListName, Path, PatternTrouble } from '../trouble.ts';
import { MIN_LENGTH } from './limits.ts';

/**
 * The first thing wrong with a pattern that its shape cannot show: an id used twice, a pin spoken of that is not
 * there, a repeat of no length, a paper map that flattens the picture. Null where all is well.
 */
export function findBrokenReference(pattern: Pattern): PatternTrouble | null {
  for (const list of ['pins', 'runs', 'marks', 'areas'] as const) {
    const twice = findDuplicate(list, pattern[list]);
    if (twice) return twice;
  }
  const pins = new Set(pattern.pins.map((pin) => pin.id));
  const named = function* (): Iterable<readonly [Path, string]> {
    for (const [i, run] of pattern.runs.entries()) {
      for (const [j, pin] of run.pins.entries()) yield [['runs', i, 'pins', j], pin];
    }
    for (const [i, mark] of pattern.marks.entries()) {
      for (const [key, anchor] of namedAnchors(mark)) {
        if ('pin' in anchor) yield [['marks', i, ...key, 'pin'], anchor.pin];
      }
    }
    for (const [i, area] of pattern.areas.entries()) {
      for (const [j, anchor] of area.outline.entries()) {
        if ('pin' in anchor) yield [['areas', i, 'outline', j, 'pin'], anchor.pin];
      }
    }
    for (const pin of Object.keys(pattern.paper?.stood ?? {})) yield [['paper', 'stood', pin], pin];
  };
  for (const [path, pin] of named()) if (!pins.has(pin)) return { kind: 'dangling-reference', path, pin };
  return findDegenerate(pattern);
}

function findDuplicate(list: ListName, records: readonly { readonly id: string }[]): PatternTrouble | null {
  const seen = new Map<string, number>();
  for (const [second, { id }] of records.entries()) {
    const first = seen.get(id);
    if (first !== undefined) return { kind: 'duplicate-id', list, id, first, second };
    seen.set(id, second);
  }
  return null;
}

function findDegenerate({ repeat, paper }: Pattern): PatternTrouble | null {
  if (repeat && Math.max(Math.abs(repeat.step.x), Math.abs(repeat.step.y)) < MIN_LENGTH) {
    return { kind: 'wrong-shape', path: ['repeat', 'step'], reason: { kind: 'zero-step' } };
  }
  if (paper && Math.abs(determinant(paper.toPattern)) < 1e-12) {
    return { kind: 'wrong-shape', path: ['paper', 'toPattern'], reason: { kind: 'flat-map' } };
  }
  return null;
}
