import { between, distance, type Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Anchor } from '#pattern/pattern.ts';
import type { Leaf } from '#pattern/recipe/tape.ts';
import type { Drafting } from '../drafting.ts';
import type { DraftTrouble } from '../trouble.ts';
import { type Pins, snapped } from './snap.ts';

/** A leaf is at least this many times as long as wide (common practice, no source). */
const LEAST_SLIMNESS = 1.5;
const CORNERS = 12;

/** A leaf, woven from pin to pin: pointed at both, and widest in its middle. */
export function layLeaf(
  drafting: Drafting,
  pins: Pins,
  { width }: Leaf,
  [from, to]: readonly [Point, Point],
  figure: string,
  id: string,
): Result<null, DraftTrouble> {
  const start = snapped(pins, from, `${figure}.from`);
  if (!start.ok) return start;
  const end = snapped(pins, to, `${figure}.to`);
  if (!end.ok) return end;
  const [a, b] = [drafting.placeOf(start.value), drafting.placeOf(end.value)];
  const size = distance(a, b);
  const most = Math.floor((100 * size) / LEAST_SLIMNESS) / 100;
  if (width > most) {
    const limits = most > 0 ? { most, nearest: most } : {};
    return failed({
      kind: 'recipe-figure',
      figure: `${figure}.width`,
      given: width,
      unit: 'mm',
      ...limits,
      why: 'does-not-fit',
    });
  }
  const side = (sign: number): Anchor[] =>
    Array.from({ length: CORNERS - 1 }, (_, k) => {
      const share = (k + 1) / CORNERS;
      const on = between(a, b, share);
      const out = (sign * (width / 2) * Math.sin(Math.PI * share)) / size;
      return { x: on.x + out * (b.y - a.y), y: on.y - out * (b.x - a.x) };
    });
  const outline = [{ pin: start.value }, ...side(1), { pin: end.value }, ...side(-1).reverse()];
  drafting.area({ id, outline, stitch: 'cloth' });
  return done(null);
}
