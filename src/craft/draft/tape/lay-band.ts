import type { Point } from '#base/geometry/point.ts';
import type { Anchor } from '#pattern/pattern.ts';
import type { Drafting } from '../drafting.ts';
import type { Band, Side } from './band.ts';
import { isStraight } from './centre-line.ts';
import type { EdgePin } from './edge-pins.ts';
import type { Placed } from './placed.ts';
import { workersRows } from './rows.ts';

/** A pin of an edge as it was laid: its id, or, where it gave way to an earlier tape, the pin it is sewn to, if any. */
type Laid = EdgePin & { readonly id: string | null; readonly sewnTo: string | null };

/** A pin gives way to an earlier one nearer than this part of the spacing, and may be sewn to one this near. */
const GIVES_WAY = 0.6;
const SEWN_WITHIN = 0.9;

/**
 * Lays the pins, runs, rows and cloth of one band. Pins that fall on an earlier band, or hard by an earlier pin, give
 * way: there the workers are sewn to the earlier pins.
 */
export function layBand(
  drafting: Drafting,
  placed: Placed,
  band: Band,
  edges: Readonly<Record<Side, readonly EdgePin[]>>,
  isCovered: (pin: EdgePin) => boolean,
): void {
  const { id, tape } = band;
  const order = [...edges.left, ...edges.right].sort((p, q) => p.parameter - q.parameter);
  const laid: Record<Side, Laid[]> = { left: [], right: [] };
  for (const pin of order) {
    const gives = isCovered(pin) || placed.nearest(pin.place, GIVES_WAY * tape.spacing) !== null;
    const own = gives
      ? null
      : drafting.pin(`${id}.${pin.side === 'left' ? 'l' : 'r'}${pin.number}`, pin.place);
    const sewnTo = gives ? placed.nearest(pin.place, SEWN_WITHIN * tape.spacing) : null;
    if (own !== null) placed.add(own, pin.place);
    laid[pin.side].push({ ...pin, id: own, sewnTo });
  }
  const shape = isStraight(band.curve) ? 'line' : 'curve';
  for (const side of ['left', 'right'] as const) {
    for (const { pins, closed, from } of stretches(laid[side], tape.closed)) {
      const role = tape.footside === side ? 'footside' : 'trail-edge';
      drafting.run({
        id: `${id}.${side}${from === 0 ? '' : `.${from}`}`,
        pins,
        shape,
        closed,
        role,
        even: true,
      });
    }
  }
  if (tape.workers) drawRows(drafting, band, laid);
  drafting.area({
    id: `${id}.${tape.stitch}`,
    outline: outlineOf(band, laid),
    stitch: tape.stitch,
    ...(tape.tint && { tint: tape.tint }),
  });
}

interface Stretch {
  readonly pins: string[];
  readonly closed: boolean;
  /** Number of its first pin. */
  readonly from: number;
}

/** The parts of an edge between pins that gave way. */
function stretches(pins: readonly Laid[], closed: boolean): Stretch[] {
  if (pins.length === 0) return [];
  const gap = pins.findIndex(({ id }) => id === null);
  if (gap < 0) return [{ pins: pins.map(({ id }) => id!), closed, from: 0 }];
  const start = closed ? gap : 0;
  const parts: Stretch[] = [];
  let own: Laid[] = [];
  for (let k = 0; k <= pins.length; k++) {
    const pin = k < pins.length ? pins[(start + k) % pins.length]! : null;
    if (pin !== null && pin.id !== null) {
      own.push(pin);
      continue;
    }
    if (own.length > 1) parts.push({ pins: own.map(({ id }) => id!), closed: false, from: own[0]!.number });
    own = [];
  }
  return parts;
}

/** Rows whose ends are both sewn lie on the earlier tape and are its own. */
function drawRows(
  drafting: Drafting,
  { id, tape, curve }: Band,
  laid: Readonly<Record<Side, readonly Laid[]>>,
): void {
  const rows = workersRows(
    laid.left.map(({ parameter }) => parameter),
    laid.right.map(({ parameter }) => parameter),
    tape.closed ? curve.spans : null,
  );
  rows.forEach(([left, right]) => {
    const [one, other] = [laid.left[left]!, laid.right[right]!];
    if (one.id === null && other.id === null) return;
    const [from, to] = [one.id ?? one.sewnTo, other.id ?? other.sewnTo];
    if (from === null || to === null || from === to) return;
    const name = `${id}.w${one.number}-${other.number}`;
    drafting.mark({ id: name, kind: 'line', from: { pin: from }, to: { pin: to } });
  });
}

/** The outline of the cloth: along the left edge, back along the right. A closed band is slit at its beginning. */
function outlineOf(band: Band, { left, right }: Readonly<Record<Side, readonly Laid[]>>): Anchor[] {
  const anchor = ({ id, place }: Laid): Anchor => (id === null ? place : { pin: id });
  const there = left.map(anchor);
  const back = right.map(anchor).reverse();
  const { tape, curve, edgePoint } = band;
  if (tape.closed) return [...there, there[0]!, ...back.slice(-1), ...back];
  const corner = (end: 'square' | 'pointed', t: number): Point[] =>
    end === 'square' ? [edgePoint('right', t)] : [];
  return [...there, ...corner(tape.finish, curve.spans), ...back, ...corner(tape.start, 0)];
}
