import { add, length, type Point, scale, subtract, unit } from '#base/geometry/point.ts';
import type { PrickingPass } from '#pattern/order.ts';
import type { Pin } from '#pattern/pattern.ts';

/** Where the letters stand: which hole, and which way out from it. */
export interface End {
  readonly letter: 'A' | 'B';
  readonly at: Point;
  readonly out: Point;
}

/** The ends of a step: along the ruler, or outward from its middle, where letters cover no hole. */
export function endsOf({ order, ruler }: PrickingPass, pins: readonly Pin[]): End[] {
  const places = order.map((pin) => pins[pin]!);
  const [first, last] = [places[0]!, places.at(-1)!];
  const along = ruler && places.length > 1 ? subtract(last, first) : null;
  const middle = scale(places.reduce(add, { x: 0, y: 0 }), 1 / places.length);
  const outward = (from: Point): Point => {
    const away = subtract(from, middle);
    return length(away) > 0 ? unit(away) : { x: 0, y: -1 };
  };
  const a: End = { letter: 'A', at: first, out: along ? unit(scale(along, -1)) : outward(first) };
  if (places.length === 1) return [a];
  return [a, { letter: 'B', at: last, out: along ? unit(along) : outward(last) }];
}
