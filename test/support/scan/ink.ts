import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import type { PixelPoint, Point } from '#base/geometry/point.ts';
import type { Random } from '#base/random.ts';
import type { Anchor, Mark, Pattern } from '#pattern/pattern.ts';
import { crossingsOf, Layer, roughBy } from './layer.ts';
import { type Field, smoothField } from './noise.ts';
import type { ScanSettings } from './options.ts';

/** Draws a pattern's markings with a draughtsman's pen: lines that thin out and break, hatching, tints, thick gimps. */
export class Pen {
  readonly ink: Layer;
  readonly tints: Layer;
  readonly rough: (x: number, y: number) => number;
  private readonly settings: ScanSettings;
  private readonly map: Affine;
  private readonly fade: Field;
  private readonly random: Random;

  constructor(width: number, height: number, map: Affine, settings: ScanSettings, random: Random) {
    this.ink = new Layer(width, height);
    this.tints = new Layer(width, height);
    this.settings = settings;
    this.map = map;
    this.random = random;
    this.rough = roughBy(smoothField(random), settings.rough * this.pixels(0.1), this.pixels(0.17));
    this.fade = smoothField(random);
  }

  /** Pixels in a length of the pattern; one pixel at 300 dpi is about 0.085 mm. */
  pixels(mm: number): number {
    return (mm * this.settings.dpi) / 25.4;
  }

  to(point: Point): PixelPoint {
    const { x, y } = applyAffine(this.map, point);
    return { column: x, row: y };
  }

  draw(pattern: Pattern): void {
    const places = new Map(pattern.pins.map((pin) => [pin.id, { x: pin.x, y: pin.y }]));
    const at = (anchor: Anchor): Point => ('pin' in anchor ? places.get(anchor.pin)! : anchor);
    for (const area of pattern.areas) {
      const outline = area.outline.map(at);
      if (area.stitch !== 'cloth') continue;
      if (area.tint)
        this.tints.fill(
          outline.map((point) => this.to(point)),
          0.3,
        );
      else this.hatch(outline);
    }
    for (const mark of pattern.marks) this.drawMark(mark, at);
  }

  /** A working line, by hand: a little bowed, of uneven strength, and faded away in places. */
  line(from: Point, to: Point, width = this.settings.line): void {
    const [a, b] = [this.to(from), this.to(to)];
    const strength = 0.85 + 0.15 * this.random();
    const size = this.pixels(width) * (0.92 + 0.16 * this.random()) + 2 * this.settings.bleed;
    const grain = this.pixels(3.5);
    // Noise in [-1, 1] of this kind lies below -0.9 + breaks for about that share of its places.
    const limit = -0.9 + 1.3 * this.settings.breaks;
    this.ink.stroke(a, b, size, strength, (x, y) => {
      const worn = this.fade(x / grain, y / grain) - limit;
      return this.rough(x, y) + (worn < 0 ? size * Math.max(-1.2, 6 * worn) : 0);
    });
  }

  /** A closed or open line of one even width through places close together. */
  path(points: readonly Point[], closed: boolean, width: number): void {
    const along = closed ? [...points, points[0]!] : points;
    const size = this.pixels(width) + 2 * this.settings.bleed;
    for (let k = 1; k < along.length; k++) {
      this.ink.stroke(this.to(along[k - 1]!), this.to(along[k]!), size, 1, this.rough);
    }
  }

  private drawMark(mark: Mark, at: (anchor: Anchor) => Point): void {
    if (mark.kind === 'line') this.line(at(mark.from), at(mark.to));
    if (mark.kind === 'gimp')
      this.path(rounded(mark.path.map(at), mark.closed), mark.closed, mark.width ?? 0.8);
    if (mark.kind === 'plait') {
      const points = mark.path.map(at);
      for (let k = 1; k < points.length; k++) {
        const [a, b] = [points[k - 1]!, points[k]!];
        const size = Math.hypot(b.x - a.x, b.y - a.y) || 1;
        for (const side of [-0.22, 0.22]) {
          const step = { x: (side * (b.y - a.y)) / size, y: (-side * (b.x - a.x)) / size };
          this.line({ x: a.x + step.x, y: a.y + step.y }, { x: b.x + step.x, y: b.y + step.y });
        }
      }
    }
  }

  private hatch(outline: readonly Point[]): void {
    const corners = outline.map(({ x, y }) => ({ column: x, row: y }));
    const rows = outline.map(({ y }) => y);
    const step = 5.2 * this.settings.line;
    for (
      let y = Math.min(...rows) + 0.6 * step;
      y < Math.max(...rows);
      y += step * (0.92 + 0.16 * this.random())
    ) {
      const cuts = crossingsOf(corners, y);
      for (let k = 0; k + 1 < cuts.length; k += 2) {
        const inset = (): number => 0.25 * this.random();
        const [left, right] = [cuts[k]! + inset(), cuts[k + 1]! - inset()];
        if (right - left > 0.5) this.line({ x: left, y }, { x: right, y }, 0.8 * this.settings.line);
      }
    }
  }
}

/** A smooth line through the given places (uniform cubic of Catmull and Rom), eight chords from each to the next. */
function rounded(points: readonly Point[], closed: boolean): Point[] {
  const count = points.length;
  const get = (k: number): Point =>
    points[closed ? (k + count) % count : Math.min(count - 1, Math.max(0, k))]!;
  const spans = closed ? count : count - 1;
  return Array.from({ length: spans * 8 + 1 }, (_, n) => {
    const k = Math.floor(n / 8);
    const t = n / 8 - k;
    const blend = (a: number, b: number, c: number, d: number): number =>
      0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - 3 * c + d - a) * t * t * t);
    const [p, q, r, s] = [get(k - 1), get(k), get(k + 1), get(k + 2)];
    return { x: blend(p.x, q.x, r.x, s.x), y: blend(p.y, q.y, r.y, s.y) };
  });
}
