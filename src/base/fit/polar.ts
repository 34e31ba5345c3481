import type { Point } from '#base/geometry/point.ts';
import { solveDense } from './solve.ts';

/** Rings round a centre: ring k has radius `radii[k]` and its places at angles `phases[k] + 2 pi m / sectors`. */
export interface PolarFrame {
  readonly centre: Point;
  readonly sectors: number;
  readonly radii: readonly number[];
  /** Radians, clockwise from the x axis on a sheet whose y runs down. */
  readonly phases: readonly number[];
}

export const polarNode = (
  { centre, sectors, radii, phases }: PolarFrame,
  ring: number,
  sector: number,
): Point => {
  const angle = phases[ring]! + (2 * Math.PI * sector) / sectors;
  return { x: centre.x + radii[ring]! * Math.cos(angle), y: centre.y + radii[ring]! * Math.sin(angle) };
};

/** Distance between neighbouring places of a ring: `2 R sin(pi / n)`. */
export const chord = (radius: number, sectors: number): number => 2 * radius * Math.sin(Math.PI / sectors);

/**
 * Betters a polar lattice whose pins' nodes are known, by one Gauss-Newton step in the centre, all radii and one
 * common turn of all rings; the phases of the rings relative to each other stay. A few steps converge.
 */
export function refinePolar(
  frame: PolarFrame,
  points: readonly Point[],
  nodes: readonly (readonly [number, number])[],
): PolarFrame {
  const rings = frame.radii.length;
  const size = rings + 3;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  const addRow = (entries: readonly (readonly [number, number])[], rest: number): void => {
    for (const [p, vp] of entries) {
      right[p]! += vp * rest;
      for (const [q, vq] of entries) matrix[p * size + q]! += vp * vq;
    }
  };
  points.forEach(({ x, y }, k) => {
    const [ring, sector] = nodes[k]!;
    const angle = frame.phases[ring]! + (2 * Math.PI * sector) / frame.sectors;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const radius = frame.radii[ring]!;
    addRow(
      [
        [0, 1],
        [2, -radius * sin],
        [3 + ring, cos],
      ],
      x - frame.centre.x - radius * cos,
    );
    addRow(
      [
        [1, 1],
        [2, radius * cos],
        [3 + ring, sin],
      ],
      y - frame.centre.y - radius * sin,
    );
  });
  const step = solveDense(matrix, right);
  if (step === null) return frame;
  return {
    centre: { x: frame.centre.x + step[0]!, y: frame.centre.y + step[1]! },
    sectors: frame.sectors,
    radii: frame.radii.map((radius, ring) => radius + step[3 + ring]!),
    phases: frame.phases.map((phase) => phase + step[2]!),
  };
}
