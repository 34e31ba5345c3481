import { applyAffine } from '#base/geometry/affine.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { type ProposalPart, proposalParts } from '#craft/true/index.ts';
import { applyProposal } from '#jobs/true/apply.ts';
import { isTaken, usualChoice } from '#jobs/true/choice.ts';
import type { Proposed } from '#jobs/true/propose.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** A place where a pin lacks: as the paper lies, and where it would stand. */
export interface MissingPlace {
  readonly id: string;
  readonly from: Point;
  readonly to: Point;
  readonly taken: boolean;
}

/** A pattern with the chosen parts of a proposal taken, as it would be. */
export interface Taking {
  readonly pattern: Pattern;
  /** Where each pin of the pattern as it was would stand, strays too. */
  readonly places: readonly Point[];
  readonly missing: readonly MissingPlace[];
  readonly stray: readonly { readonly id: string; readonly pin: number; readonly taken: boolean }[];
  readonly moved: number;
  readonly farthest: number;
  readonly added: number;
  readonly dropped: number;
  readonly copy: boolean;
  /** Whether places before and afterwards are in one unit, so that a move can be drawn. */
  readonly isSameUnit: boolean;
}

/** Two ways of reckoning one place differ by no more, mm. */
const ROUNDING = 1e-9;

/** What the command takes where nothing else is asked for. */
export const usuallyTaken = (parts: readonly ProposalPart[]): ReadonlySet<string> =>
  new Set(parts.filter((part) => isTaken(part, usualChoice)).map(({ id }) => id));

/** Takes the parts with the given ids, as the command does with `--take`. */
export function take(before: Pattern, { proposal, knownLength }: Proposed, ids: ReadonlySet<string>): Taking {
  const parts = proposalParts(proposal);
  const { pattern, places, whole } = applyProposal(before, proposal, ({ id }) => ids.has(id), knownLength);
  // Where pixels become millimetres every place is another number: what moved is told against the sheet put right.
  const isSameUnit = before.unit === pattern.unit;
  const least = isSameUnit ? 0 : ROUNDING;
  let [moved, farthest] = [0, 0];
  before.pins.forEach((pin, index) => {
    const way = distance(isSameUnit ? pin : applyAffine(whole, pin), places[index]!);
    if (way > least) moved++;
    if (way > farthest) farthest = way;
  });
  const takenOf = (kind: ProposalPart['kind']) =>
    parts.filter((part) => part.kind === kind && ids.has(part.id)).length;
  return {
    pattern,
    places,
    missing: parts.flatMap((part) =>
      part.kind === 'add'
        ? [
            {
              id: part.id,
              from: part.missing,
              to: applyAffine(whole, part.missing),
              taken: ids.has(part.id),
            },
          ]
        : [],
    ),
    stray: parts.flatMap((part) =>
      part.kind === 'remove' ? [{ id: part.id, pin: part.pin, taken: ids.has(part.id) }] : [],
    ),
    isSameUnit,
    moved,
    farthest,
    added: takenOf('add'),
    dropped: takenOf('remove'),
    copy: takenOf('undistort') > 0,
  };
}

/** A place part of the way, exact at both ends. */
export const between = (from: Point, to: Point, share: number): Point =>
  share === 0
    ? from
    : share === 1
      ? to
      : { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
