import { cross, dot, length, type Point, subtract } from '#base/geometry/point.ts';
import type { Pattern, Run, RunRole } from '#pattern/pattern.ts';
import { Ids } from './ids.ts';
import { JOIN_WITHIN, type PinNames, prefixOf } from './names.ts';

type Places = ReadonlyMap<string, Point>;

/**
 * The runs of all parts under the pins' new names. Two runs of different parts that end on one pin go on as one, where
 * they are of one kind: edges and trails go on along a curve, a line only where it stays straight. A run that comes
 * back to its own beginning is closed, and a run that an earlier part has too is kept once.
 */
export function joinRuns(parts: readonly Pattern[], idsOf: PinNames, places: Places): Run[] {
  const seen = new Map<string, number>();
  const chains: Chain[] = [];
  const open = new OpenEnds();
  parts.forEach(({ runs }, part) => {
    for (const run of runs) {
      const pins = run.pins.map((id) => idsOf[part]!.get(id)!).filter((id, at, all) => id !== all[at - 1]);
      const says = pins[0]! < pins.at(-1)! ? pins.join() : pins.toReversed().join();
      if (pins.length < 2 || (seen.get(says) ?? part) < part) continue;
      seen.set(says, part);
      const fresh: Chain = { run, part, pins, turned: false, parts: [part, part], closed: run.closed };
      chains.push(fresh);
      let chain = fresh;
      for (let next = open.meeting(chain, places); next !== null; next = open.meeting(chain, places)) {
        open.remove(next.chain);
        chain = linked(next.chain, chain, next.pin);
      }
      if (!chain.closed) open.add(chain);
    }
  });
  const ids = new Ids();
  return chains
    .filter(({ pins }) => pins.length > 0)
    .map(({ run, part, pins, turned, closed }) => ({
      ...run,
      id: ids.give(prefixOf(part) + run.id),
      pins: turned ? pins.toReversed() : pins,
      closed,
    }));
}

/** A run while it grows; `parts` are those that its two ends belong to. One that went into another has no pins left. */
interface Chain {
  run: Run;
  part: number;
  pins: string[];
  /** Whether the pins are in the opposite order to that of `run`. */
  turned: boolean;
  parts: [number, number];
  closed: boolean;
}

class OpenEnds {
  readonly #at = new Map<string, Set<Chain>>();

  add(chain: Chain): void {
    for (const end of endsOf(chain)) {
      const here = this.#at.get(end);
      if (here) here.add(chain);
      else this.#at.set(end, new Set([chain]));
    }
  }

  remove(chain: Chain): void {
    for (const end of endsOf(chain)) this.#at.get(end)?.delete(chain);
  }

  /** An open chain that goes on where this one ends, and the pin that both end on. */
  meeting(chain: Chain, places: Places): { readonly chain: Chain; readonly pin: string } | null {
    if (chain.closed) return null;
    for (const pin of endsOf(chain)) {
      for (const other of this.#at.get(pin) ?? []) {
        if (goesOn(other, chain, pin, places)) return { chain: other, pin };
      }
    }
    return null;
  }
}

/** The longer takes in the shorter, so that many short ones after each other cost no more than their pins. */
function linked(one: Chain, other: Chain, pin: string): Chain {
  const [long, short] = one.pins.length >= other.pins.length ? [one, other] : [other, one];
  if (long.pins.at(-1) !== pin) turn(long);
  if (short.pins[0] !== pin) turn(short);
  for (let at = 1; at < short.pins.length; at++) long.pins.push(short.pins[at]!);
  long.parts[1] = short.parts[1];
  if (short.part < long.part) {
    long.run = short.run;
    long.part = short.part;
    long.turned = short.turned;
  }
  short.pins = [];
  if (long.pins.length > 3 && long.pins[0] === long.pins.at(-1)) {
    long.pins.pop();
    long.closed = true;
  }
  return long;
}

function turn(chain: Chain): void {
  chain.pins.reverse();
  chain.parts.reverse();
  chain.turned = !chain.turned;
}

function goesOn(one: Chain, other: Chain, pin: string, places: Places): boolean {
  const { role, shape, even } = one.run;
  if (role !== other.run.role || shape !== other.run.shape || even !== other.run.even) return false;
  if (partAt(one, pin) === partAt(other, pin)) return false;
  return shape === 'line' ? isStraight(one, other, pin, places) : GO_ROUND.has(role);
}

function isStraight(one: Chain, other: Chain, pin: string, places: Places): boolean {
  const far = (chain: Chain): Point => places.get(endsOf(chain).find((end) => end !== pin)!)!;
  const before = subtract(places.get(pin)!, far(one));
  const after = subtract(far(other), places.get(pin)!);
  const chord = subtract(far(other), far(one));
  return dot(before, after) > 0 && Math.abs(cross(before, chord)) <= JOIN_WITHIN * length(chord);
}

/** Curves of these roles go round a bend or a cusp as one; an outline that meets another at its tip does not. */
const GO_ROUND: ReadonlySet<RunRole> = new Set(['footside', 'headside', 'trail-edge', 'centre']);

const endsOf = ({ pins }: Chain): readonly [string, string] => [pins[0]!, pins.at(-1)!];

const partAt = ({ pins, parts }: Chain, pin: string): number => parts[pins[0] === pin ? 0 : 1];
