import { distance, type Point } from '#base/geometry/point.ts';
import type { Anchor, Area, Mark, Pattern, Repeat, Run, RunRole, Stitch } from '#pattern/pattern.ts';
import type { KnownPattern, Role } from './known.ts';

/** Gathers pins, runs, marks and areas while a generator draws, and hands them out as one known pattern. */
export class PatternBuilder {
  readonly places: Point[] = [];
  readonly roles: Role[] = [];
  private readonly runs: Run[] = [];
  private readonly marks: Mark[] = [];
  private readonly areas: Area[] = [];
  private readonly joined = new Set<string>();

  /** Adds a pin and says its index; a pin that stands there already (within 0.01 mm) is used again. */
  pin(place: Point, role: Role): number {
    const there = this.places.findIndex((other) => distance(other, place) < 0.01);
    if (there >= 0) return there;
    this.places.push(place);
    this.roles.push(role);
    return this.places.length - 1;
  }

  /** Draws a working line once, however often it is asked for. */
  line(from: number, to: number): void {
    const key = `${Math.min(from, to)} ${Math.max(from, to)}`;
    if (from === to || this.joined.has(key)) return;
    this.joined.add(key);
    this.mark({ kind: 'line', from: this.at(from), to: this.at(to) });
  }

  /** Draws a working line between two places of which at most one is a pin. */
  stroke(from: Anchor, to: Anchor): void {
    this.mark({ kind: 'line', from, to });
  }

  gimp(path: readonly Anchor[], closed: boolean, width: number): void {
    this.mark({ kind: 'gimp', path, closed, width });
  }

  plait(path: readonly Anchor[]): void {
    this.mark({ kind: 'plait', path });
  }

  picot(pin: number): void {
    this.mark({ kind: 'picot', at: this.at(pin) });
  }

  /** Says that these pins stand in this order along one line or curve, at even distances, and draws that line. */
  run(pins: readonly number[], role: RunRole, options: { closed?: boolean; drawn?: boolean } = {}): void {
    const { closed = false, drawn = true } = options;
    const shape = role === 'footside' ? 'line' : 'curve';
    this.runs.push({ id: `run${this.runs.length}`, pins: pins.map(idOf), shape, closed, role, even: true });
    if (!drawn) return;
    for (let k = 1; k < pins.length; k++) this.line(pins[k - 1]!, pins[k]!);
    if (closed) this.line(pins.at(-1)!, pins[0]!);
  }

  area(outline: readonly Anchor[], stitch: Stitch, tint?: string): void {
    this.areas.push({ id: `area${this.areas.length}`, outline, stitch, ...(tint ? { tint } : {}) });
  }

  /** The anchor that names a pin. */
  at(pin: number): Anchor {
    return { pin: idOf(pin) };
  }

  finish(name: string, lace: string, repeat?: Repeat): KnownPattern {
    const pattern: Pattern = {
      unit: 'mm',
      about: { name, lace },
      pins: this.places.map(({ x, y }, index) => ({ id: idOf(index), x, y })),
      runs: this.runs,
      marks: this.marks,
      areas: this.areas,
      ...(repeat ? { repeat } : {}),
      sizes: {},
      scale: { from: 'drafted' },
    };
    return { pattern, roles: this.roles, ideal: this.places, omitted: [] };
  }

  private mark<Kind extends Mark>(mark: Kind extends Mark ? Omit<Kind, 'id'> : never): void {
    this.marks.push({ id: `mark${this.marks.length}`, ...mark } as unknown as Mark);
  }
}

const idOf = (index: number): string => `p${index}`;
