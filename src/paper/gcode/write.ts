import type { Point } from '#base/geometry/point.ts';
import { type CutDrawing, type CutLine, cutLayers, linesIn } from '../cut/drawing.ts';
import { fixed } from '../cut/fixed.ts';
import { type Chain, circleCorners, flatten } from '../cut/flatten.ts';

export interface GcodeOptions {
  /** mm a minute and S, along cuts and along engraved lines. */
  readonly cut: Tool;
  readonly engrave: Tool;
  /** S at full power ($30 of GRBL). */
  readonly mostPower: number;
  /** Whether circles are arcs, or straight lines that err by at most 0.01 mm. */
  readonly arcs: boolean;
  /** Milliseconds of standing beam a hole in place of tracing it; null to trace. */
  readonly pierce: number | null;
  /** In which the firmware reads the P of a dwell: seconds (RS274/NGC, GRBL) or milliseconds. */
  readonly dwellUnit: 's' | 'ms';
  readonly comments: readonly string[];
}

export interface Tool {
  readonly feed: number;
  readonly power: number;
}

/**
 * A cutting file as G-code (words of RS274/NGC, NISTIR 6556, with S as laser power): mm, absolute, y up, from 0,0.
 * Holes are traced with the beam on; every move between them is made with S0, so that nothing burns even where the
 * firmware's laser mode is off. Lines for aligning only are not burnt: where the middles of targets lie stands in comments.
 */
export function writeGcode(drawing: CutDrawing, options: GcodeOptions): string {
  const writer = new GcodeWriter(drawing.height, options);
  writer.comments();
  for (const layer of cutLayers) {
    const lines = linesIn(drawing, layer);
    if (layer === 'REF') {
      for (const line of lines) if (line.kind === 'circle') writer.target(line.at);
      continue;
    }
    if (lines.length === 0) continue;
    writer.comment(layer);
    writer.use(layer === 'ENGRAVE' ? options.engrave : options.cut);
    for (const line of lines) writer.line(line, layer === 'HOLES');
  }
  return writer.finish();
}

/** The beam stands this long on a hole that is too fine to trace, ms. */
const POINT_DWELL = 100;

class GcodeWriter {
  readonly #blocks: string[] = ['G21', 'G90', 'G17', 'M5 S0'];
  readonly #height: number;
  readonly #options: GcodeOptions;
  #tool: Tool;
  #beam: 'off' | 'M4' = 'off';

  constructor(height: number, options: GcodeOptions) {
    this.#height = height;
    this.#options = options;
    this.#tool = options.cut;
  }

  comment(text: string): void {
    // A comment ends at its first closing bracket, and may not hold another opening one.
    this.#blocks.push(
      `(${text
        .replace(/[()]/g, '-')
        .replace(/[^\x20-\x7e]/gu, '?')
        .slice(0, 200)})`,
    );
  }

  comments(): void {
    const { cut, engrave, mostPower, comments } = this.#options;
    for (const text of comments) this.comment(text);
    this.comment('Units: mm, from the lower left corner');
    this.comment(
      `Cut F${cut.feed} S${cut.power}, engrave F${engrave.feed} S${engrave.power}, S max ${mostPower}`,
    );
    this.comment('GRBL: $30 is S max, and $32=1 laser mode must be on');
  }

  target(at: Point): void {
    this.comment(`Target at ${this.#place(at)}`);
  }

  use(tool: Tool): void {
    this.#tool = tool;
  }

  line(line: CutLine, isHole: boolean): void {
    if (line.kind === 'path') for (const chain of flatten(line.path)) this.#chain(chain);
    else if (isHole && (this.#options.pierce !== null || line.diameter === 0)) this.#pierce(line.at);
    else if (this.#options.arcs) this.#circle(line.at, line.diameter / 2);
    else this.#chain({ points: circleCorners(line.at, line.diameter), closed: true });
  }

  finish(): string {
    this.#off();
    this.#blocks.push('G0 X0.0000 Y0.0000', 'M5 S0');
    return `${this.#blocks.join('\n')}\n`;
  }

  #circle({ x, y }: Point, radius: number): void {
    this.#goto({ x: x + radius, y });
    const { feed, power } = this.#tool;
    const middle = `I${fixed(-radius)} J${fixed(0)}`;
    const back = `I${fixed(radius)} J${fixed(0)}`;
    this.#blocks.push(`G3 ${this.#place({ x: x - radius, y })} ${middle} F${feed} S${power}`);
    this.#blocks.push(`G3 ${this.#place({ x: x + radius, y })} ${back}`);
  }

  #chain({ points, closed }: Chain): void {
    const { feed, power } = this.#tool;
    this.#goto(points[0]!);
    [...points.slice(1), ...(closed ? [points[0]!] : [])].forEach((point, k) => {
      this.#blocks.push(`G1 ${this.#place(point)}${k === 0 ? ` F${feed} S${power}` : ''}`);
    });
  }

  /** A standing beam needs constant power: with M4 a machine turns it off while nothing moves. */
  #pierce(at: Point): void {
    const { pierce, dwellUnit } = this.#options;
    this.#off();
    // GRBL times dwells in steps of 50 ms.
    const dwell = Math.max(50, Math.round((pierce ?? POINT_DWELL) / 50) * 50);
    const length = dwellUnit === 's' ? fixed(dwell / 1000, 3) : `${dwell}`;
    this.#blocks.push(`G0 ${this.#place(at)}`, `M3 S${this.#tool.power}`, `G4 P${length}`, 'M5 S0');
  }

  #goto(point: Point): void {
    if (this.#beam === 'off') {
      this.#blocks.push(`G0 ${this.#place(point)}`, 'M4 S0');
      this.#beam = 'M4';
    } else this.#blocks.push(`G0 ${this.#place(point)} S0`);
  }

  #off(): void {
    if (this.#beam !== 'off') this.#blocks.push('M5 S0');
    this.#beam = 'off';
  }

  #place = ({ x, y }: Point): string => `X${fixed(x)} Y${fixed(this.#height - y)}`;
}
