import type { Point } from './point.ts';

/** A cubic Bezier curve: two ends and the two points that shape it. */
export type Cubic = readonly [Point, Point, Point, Point];

/** Nodes and weights of 24-point Gauss-Legendre quadrature on [-1, 1], found by Newton's method on the polynomial. */
const GAUSS = gaussLegendre(24);

/** The integral of `value` from `from` to `to`, split in `pieces`; exact for polynomials of degree 47 in each. */
export function integrate(value: (t: number) => number, from: number, to: number, pieces = 1): number {
  const half = (to - from) / (2 * pieces);
  let sum = 0;
  for (let piece = 0; piece < pieces; piece++) {
    const middle = from + half * (2 * piece + 1);
    for (const { node, weight } of GAUSS) sum += weight * value(middle + half * node);
  }
  return sum * half;
}

export function cubicPoint([a, b, c, d]: Cubic, t: number): Point {
  const s = 1 - t;
  const [wa, wb, wc, wd] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return { x: wa * a.x + wb * b.x + wc * c.x + wd * d.x, y: wa * a.y + wb * b.y + wc * c.y + wd * d.y };
}

/** Length of a cubic Bezier curve, or of its part from parameter `from` to `to`, in the unit of its points. */
export function cubicLength([a, b, c, d]: Cubic, from = 0, to = 1): number {
  const speed = (t: number): number => {
    const s = 1 - t;
    const [wa, wb, wc] = [3 * s * s, 6 * s * t, 3 * t * t];
    return Math.hypot(
      wa * (b.x - a.x) + wb * (c.x - b.x) + wc * (d.x - c.x),
      wa * (b.y - a.y) + wb * (c.y - b.y) + wc * (d.y - c.y),
    );
  };
  // Near a cusp the speed is no polynomial at all; pieces keep the error small there too.
  return integrate(speed, from, to, 16);
}

/**
 * Length of an ellipse's arc with half axes `p` and `q` between two values of its parameter (the excentric angle,
 * radians from the axis `p`). The whole perimeter is `4 p E(e^2)`, E the complete elliptic integral of the second kind.
 */
export const ellipseArc = (p: number, q: number, from: number, to: number): number =>
  integrate((t) => Math.hypot(p * Math.sin(t), q * Math.cos(t)), from, to, 24);

export const ellipsePerimeter = (p: number, q: number): number => 4 * ellipseArc(p, q, 0, Math.PI / 2);

function gaussLegendre(n: number): { node: number; weight: number }[] {
  return Array.from({ length: n }, (_, k) => {
    let x = Math.cos((Math.PI * (k + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let round = 0; round < 100; round++) {
      let [before, here] = [1, x];
      for (let degree = 2; degree <= n; degree++) {
        [before, here] = [here, ((2 * degree - 1) * x * here - (degree - 1) * before) / degree];
      }
      slope = (n * (x * here - before)) / (x * x - 1);
      const change = here / slope;
      x -= change;
      if (Math.abs(change) < 1e-16) break;
    }
    return { node: x, weight: 2 / ((1 - x * x) * slope * slope) };
  });
}
