import { describe, expect, it } from 'vitest';
import { distance } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import type { Finding } from '#craft/look/finding.ts';
import { lookOver } from '#craft/look/look-over.ts';
import { handOrder } from '#craft/route/hand.ts';
import { findRegularity } from '#craft/true/index.ts';
import {
  drawPins,
  edging,
  fine,
  jitter,
  type KnownPattern,
  omit,
  tape,
} from '../../support/patterns/index.ts';
import { inspection } from './inspections.ts';

/** Looking over with what straightening really finds, as the job does it. */
function look({ pattern: { sheet: _, ...pattern } }: KnownPattern): Finding[] {
  const about = { maker: 'an invented maker', permission: 'for tests' };
  const parts = inspection({ ...pattern, about, sizes: { hole: 0.3 } }, findRegularity(pattern.pins));
  const { sheet: __, ...unframed } = parts.pattern;
  return lookOver({ ...parts, pattern: unframed });
}

const GAPS = ['gap-in-lattice', 'gap-in-run', 'loose-mark'];

describe.each([
  ['an edging', edging()],
  ['a fine piece', fine({ repeats: 1 })],
  ['a tape', tape()],
])('%s, with the structures that straightening finds', (_, known) => {
  it('has no findings while it is exact', () => {
    expect(look(known)).toEqual([]);
  });

  it('shows where each of three pins with lines to them was left out', () => {
    const lined = new Set(
      known.pattern.marks.flatMap((mark) =>
        mark.kind === 'line' ? [mark.from, mark.to].flatMap((end) => ('pin' in end ? end.pin : [])) : [],
      ),
    );
    const ids = known.pattern.pins.map((pin) => pin.id);
    const drawn = drawPins(known, 60, seededRandom(11)).filter((index) => lined.has(ids[index]!));
    const holed = omit(known, drawn.slice(0, 3));
    const findings = look(holed).filter((finding) => GAPS.includes(finding.rule));
    for (const { place } of holed.omitted) {
      const near = findings.filter(({ at }) => at !== null && distance(at, place) < 0.5);
      expect(near.length).toBeGreaterThanOrEqual(1);
    }
  });

  it('is pricked in passes that hold every pin once, steady or not', () => {
    for (const sigma of [0, 0.1]) {
      const { pattern } = sigma === 0 ? known : jitter(known, sigma, seededRandom(5));
      const { passes } = handOrder(pattern, findRegularity(pattern.pins));
      const all = passes.flatMap((pass) => pass.order);
      expect(all.toSorted((a, b) => a - b)).toEqual(pattern.pins.map((_, at) => at));
    }
  });
});
