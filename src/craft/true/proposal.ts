import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import type { MissingPin, Regularity, Structure } from '#pattern/structure.ts';
import { copyDistortion, type KnownTruth } from './distortion.ts';
import { findRegularity, type RegularityOptions } from './regularity.ts';

export type StraightenOptions = RegularityOptions & KnownTruth;

/** A pattern as it is and as it could be: what was found, and the copy's distortion where something known shows it. */
export interface Proposal extends Regularity {
  /** The pins as they were given. */
  readonly pins: readonly Point[];
  /** Undoes the distortion of copying; it applies to the straightened places of all pins. Null where it is not known. */
  readonly undistort: Affine | null;
}

/**
 * Proposes a true pattern: nothing is changed until parts of the proposal are taken (`takeParts`).
 * `trueAngle` and `knownDistance` say what copying may have spoilt.
 */
export function straighten(pins: readonly Point[], options: StraightenOptions = {}): Proposal {
  const regularity = findRegularity(pins, options);
  return { ...regularity, pins, undistort: copyDistortion(regularity, options) };
}

/** One thing in a proposal that can be taken or left. */
export type ProposalPart =
  | {
      readonly kind: 'straighten';
      readonly id: string;
      readonly structure: Structure;
      readonly moves: readonly PinMove[];
      /** The longest of the moves, mm. */
      readonly farthest: number;
    }
  | { readonly kind: 'add'; readonly id: string; readonly missing: MissingPin }
  | { readonly kind: 'remove'; readonly id: string; readonly pin: number }
  | { readonly kind: 'undistort'; readonly id: string; readonly map: Affine };

export interface PinMove {
  readonly pin: number;
  readonly to: Point;
}

const partsFound = new WeakMap<Proposal, readonly ProposalPart[]>();

/** The parts of a proposal: a structure's moves, each missing pin, each stray pin, the copy's distortion. */
export function proposalParts(proposal: Proposal): readonly ProposalPart[] {
  const parts = partsFound.get(proposal) ?? findParts(proposal);
  partsFound.set(proposal, parts);
  return parts;
}

function findParts(proposal: Proposal): ProposalPart[] {
  const { pins, places, structures, structureOf, missing, stray, undistort } = proposal;
  const moves = new Map<string, PinMove[]>();
  structureOf.forEach((id, pin) => {
    const from = pins[pin]!;
    const to = places[pin]!;
    if (id === null || (from.x === to.x && from.y === to.y)) return;
    const own = moves.get(id);
    if (own === undefined) moves.set(id, [{ pin, to }]);
    else own.push({ pin, to });
  });
  const straightened = structures.flatMap((structure): ProposalPart[] => {
    const own = moves.get(structure.id);
    if (own === undefined) return [];
    const farthest = own.reduce((most, { pin, to }) => Math.max(most, distance(pins[pin]!, to)), 0);
    return [{ kind: 'straighten', id: structure.id, structure, moves: own, farthest }];
  });
  return [
    ...straightened,
    ...missing.map((one, k): ProposalPart => ({ kind: 'add', id: `missing-${k + 1}`, missing: one })),
    ...stray.map((pin): ProposalPart => ({ kind: 'remove', id: `stray-${pin}`, pin })),
    ...(undistort === null ? [] : [{ kind: 'undistort', id: 'copy', map: undistort } as const]),
  ];
}

/** What taking parts of a proposal does to the pins, in plain data. */
export interface Taken {
  /** Where each pin of the input stands then; removed ones keep their entry. */
  readonly places: readonly Point[];
  readonly added: readonly Point[];
  /** Indices of the pins to take out, rising. */
  readonly removed: readonly number[];
}

/** Takes the parts for which `which` says yes; all others are left. */
export function takeParts(proposal: Proposal, which: (part: ProposalPart) => boolean): Taken {
  const places = [...proposal.pins];
  const added: Point[] = [];
  const removed: number[] = [];
  let map: Affine | null = null;
  for (const part of proposalParts(proposal)) {
    if (!which(part)) continue;
    if (part.kind === 'straighten') for (const { pin, to } of part.moves) places[pin] = to;
    else if (part.kind === 'add') added.push({ x: part.missing.x, y: part.missing.y });
    else if (part.kind === 'remove') removed.push(part.pin);
    else map = part.map;
  }
  if (map === null) return { places, added, removed };
  const through = (point: Point): Point => applyAffine(map!, point);
  return { places: places.map(through), added: added.map(through), removed };
}
