import type { PixelPoint, Point } from '../geometry/point.ts';

/**
 * Turns the shared side of a triangle that is folded over in the picture, and of its neighbour, to the other diagonal of
 * the four-sided figure they make, where both are then unfolded on the sheet and in the picture. A thin triangle whose
 * tip has moved across its long side is put right by that. Changes `triangles` in place; says how many stay folded.
 */
export function unfold(
  places: readonly Point[],
  sources: readonly PixelPoint[],
  triangles: Uint32Array,
): number {
  const isSound = (a: number, b: number, c: number, sign: number): boolean => {
    const [p, q, r] = [places[a]!, places[b]!, places[c]!];
    const [u, v, w] = [sources[a]!, sources[b]!, sources[c]!];
    const onSheet = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    const inPicture = (v.column - u.column) * (w.row - u.row) - (v.row - u.row) * (w.column - u.column);
    return onSheet < 0 && inPicture * sign < 0;
  };
  // A picture that lies mirrored turns every triangle; only those that differ from the rest are folded.
  const sign = mostlyMirrored(sources, triangles) ? -1 : 1;
  const corner = (at: number): number => triangles[at]!;
  let folded = Infinity;
  for (;;) {
    const wrong: number[] = [];
    for (let t = 0; t < triangles.length; t += 3) {
      if (!isSound(corner(t), corner(t + 1), corner(t + 2), sign)) wrong.push(t);
    }
    if (wrong.length === 0 || wrong.length >= folded) return wrong.length;
    folded = wrong.length;
    for (const t of wrong) {
      for (let side = 0; side < 3; side++) {
        const [p, q, tip] = [corner(t + side), corner(t + ((side + 1) % 3)), corner(t + ((side + 2) % 3))];
        const beyond = acrossFrom(triangles, q, p);
        if (beyond === null) continue;
        const other = corner(beyond.tip);
        if (!isSound(p, other, tip, sign) || !isSound(other, q, tip, sign)) continue;
        triangles.set([p, other, tip], t);
        triangles.set([other, q, tip], beyond.triangle);
        break;
      }
    }
  }
}

/** The triangle in which `from` is followed by `to`, and where its third corner is written. */
function acrossFrom(
  triangles: Uint32Array,
  from: number,
  to: number,
): { readonly triangle: number; readonly tip: number } | null {
  for (let t = 0; t < triangles.length; t += 3) {
    for (let side = 0; side < 3; side++) {
      if (triangles[t + side] !== from || triangles[t + ((side + 1) % 3)] !== to) continue;
      return { triangle: t, tip: t + ((side + 2) % 3) };
    }
  }
  return null;
}

function mostlyMirrored(sources: readonly PixelPoint[], triangles: Uint32Array): boolean {
  let balance = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [u, v, w] = [sources[triangles[t]!]!, sources[triangles[t + 1]!]!, sources[triangles[t + 2]!]!];
    balance += Math.sign((v.column - u.column) * (w.row - u.row) - (v.row - u.row) * (w.column - u.column));
  }
  return balance > 0;
}
