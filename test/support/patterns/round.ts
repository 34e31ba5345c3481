import { distance, type Point } from '#base/geometry/point.ts';
import { PatternBuilder } from './builder.ts';
import { evenly, sample } from './curve.ts';
import type { KnownPattern } from './known.ts';

export interface RoundOptions {
  /** Sectors of the polar lattice; a multiple of `parts`. */
  readonly sectors?: number;
  /** How many times the mat repeats round its centre. */
  readonly parts?: number;
  readonly rings?: number;
  /** Radius of the innermost ring, mm. */
  readonly innerRadius?: number;
  /** How fast the rings move apart: 1 keeps the meshes square. */
  readonly growth?: number;
  /** Turn of the whole mat, radians. */
  readonly turn?: number;
  readonly tint?: string;
}

/**
 * A round mat: a centre with spokes, a ground on a polar lattice whose rings move apart as they grow, cloth-stitch
 * diamonds, and fans round the edge. Places are counted in rings k and half sectors m, with k + m even.
 */
export function round(options: RoundOptions = {}): KnownPattern {
  const { parts = 9, rings = 16, innerRadius = 9, growth = 1, turn = 0.1, tint } = options;
  const sectors = Math.max(1, Math.round((options.sectors ?? 54) / parts)) * parts;
  const build = new PatternBuilder();
  const ratio = 1 + (growth * Math.PI) / sectors;
  const perPart = (2 * sectors) / parts;
  const polar = (radius: number, angle: number): Point => ({
    x: radius * Math.cos(turn + angle),
    y: radius * Math.sin(turn + angle),
  });
  const radiusOf = (ring: number): number => innerRadius * ratio ** ring;
  const angleOf = (half: number): number => (Math.PI * half) / sectors;

  const diamond = {
    ring: Math.round(0.55 * rings),
    half: Math.round(0.55 * rings) % 2,
    radius: perPart >= 12 ? 4 : 2,
  };
  const away = (ring: number, half: number): number => {
    const side = (((half - diamond.half) % perPart) + perPart) % perPart;
    return Math.abs(ring - diamond.ring) + Math.min(side, perPart - side);
  };
  const nodes = new Map<string, number>();
  const node = (ring: number, half: number): number | undefined =>
    nodes.get(`${ring} ${(half + 2 * sectors) % (2 * sectors)}`);
  for (let ring = 0; ring < rings; ring++) {
    for (let half = ring % 2; half < 2 * sectors; half += 2) {
      const from = away(ring, half);
      if (from < diamond.radius) continue;
      const role = from === diamond.radius ? 'outline' : 'ground';
      nodes.set(`${ring} ${half}`, build.pin(polar(radiusOf(ring), angleOf(half)), role));
    }
  }
  for (const [key, pin] of nodes) {
    const [ring, half] = key.split(' ').map(Number) as [number, number];
    for (const side of [-1, 1]) {
      const outer = node(ring + 1, half + side);
      if (outer !== undefined) build.line(pin, outer);
    }
  }

  const centre = build.pin({ x: 0, y: 0 }, 'centre');
  for (let part = 0; part < parts; part++) {
    const first = part * perPart;
    const end = node(0, first + (first % 2));
    if (end !== undefined) {
      const half = build.pin(polar(innerRadius * 0.55, angleOf(first + (first % 2))), 'centre');
      build.plait([build.at(centre), build.at(half), build.at(end)]);
    }
    const { ring, half, radius } = diamond;
    const corners = [
      node(ring - radius, half + first),
      node(ring, half + first + radius),
      node(ring + radius, half + first),
      node(ring, half + first - radius),
    ].flatMap((pin) => (pin === undefined ? [] : [build.at(pin)]));
    if (corners.length === 4) build.area(corners, 'cloth', tint);
    fan(first);
  }
  return build.finish('Mat', 'round');

  function fan(first: number): void {
    const last = rings - 1;
    const start = first + ((first + last) % 2);
    const stop = start + perPart + (perPart % 2);
    const ends = [node(last, start)!, node(last, stop)!] as const;
    const [a, b] = [build.places[ends[0]]!, build.places[ends[1]]!];
    const middle = angleOf((start + stop) / 2);
    const outer = radiusOf(last);
    const reach = 0.28 * distance(a, b);
    const arc = sample(
      (t) =>
        polar(outer + reach * Math.sin(t), middle - ((angleOf(stop) - angleOf(start)) / 2) * Math.cos(t)),
      0,
      Math.PI,
    );
    const pins = evenly(arc, perPart + 1, false).map((point, k) =>
      k === 0 ? ends[0] : k === perPart ? ends[1] : build.pin(point, 'fan'),
    );
    build.run(pins, 'headside');
    for (let k = 1; k < perPart; k++) {
      const inner = node(last, start + 2 * Math.round(k / 2));
      if (inner !== undefined) build.line(pins[k]!, inner);
    }
  }
}
