import { type Cubic, cubicPoint } from './curve.ts';
import type { Motion, ParametricCurve } from './motion.ts';

/** Cubic Bezier curves end to end as one curve, a span each. Throws where there are none. */
export function cubicChain(cubics: readonly Cubic[]): ParametricCurve {
  if (cubics.length === 0) throw new RangeError('cubicChain: no curves');
  return {
    spans: cubics.length,
    motionAt: (t) => {
      const span = Math.max(0, Math.min(cubics.length - 1, Math.floor(t)));
      return cubicMotion(cubics[span]!, t - span);
    },
  };
}

export function cubicMotion(cubic: Cubic, t: number): Motion {
  const [a, b, c, d] = cubic;
  const s = 1 - t;
  const [va, vb, vc] = [3 * s * s, 6 * s * t, 3 * t * t];
  return {
    place: cubicPoint(cubic, t),
    velocity: {
      x: va * (b.x - a.x) + vb * (c.x - b.x) + vc * (d.x - c.x),
      y: va * (b.y - a.y) + vb * (c.y - b.y) + vc * (d.y - c.y),
    },
    acceleration: {
      x: 6 * (s * (a.x - 2 * b.x + c.x) + t * (b.x - 2 * c.x + d.x)),
      y: 6 * (s * (a.y - 2 * b.y + c.y) + t * (b.y - 2 * c.y + d.y)),
    },
  };
}
