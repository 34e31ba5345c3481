import {
  type Affine,
  applyAffine,
  compose,
  determinant,
  identity,
  scaling,
  translation,
} from '#base/geometry/affine.ts';
import { boxOf, heightOf, widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { MM_PER_INCH } from '#base/units/length.ts';
import type { Proposal, ProposalPart, Taken } from '#craft/true/index.ts';
import { takeParts } from '#craft/true/index.ts';
import { mapAnchors } from '#pattern/anchors.ts';
import { applyChange } from '#pattern/change/change.ts';
import { removePins } from '#pattern/change/remove-pins.ts';
import type { Anchor, Pattern, Pin, Scale } from '#pattern/pattern.ts';

/** A pattern with parts of a proposal taken, and where each pin of the input stands in it, removed ones too. */
export interface Straightened {
  readonly pattern: Pattern;
  readonly places: readonly Point[];
  /** The map from the pattern as it was to the sheet as it is, for what the proposal did not move. */
  readonly whole: Affine;
}

/**
 * Takes parts of a proposal into a pattern. Marks and areas follow their pins; what is drawn at a place of its own
 * follows only where the whole copy is put right. Pins that no part speaks of stay exactly where they are.
 */
export function applyProposal(
  pattern: Pattern,
  proposal: Proposal,
  isTaken: (part: ProposalPart) => boolean,
  knownLength: number | null,
): Straightened {
  const confidences: number[] = [];
  let copy: Affine | null = null;
  const taken = takeParts(proposal, (part) => {
    const wanted = isTaken(part);
    if (wanted && part.kind === 'add') confidences.push(part.missing.confidence);
    if (wanted && part.kind === 'undistort') copy = part.map;
    return wanted;
  });
  const frame = frameOf(pattern, copy);
  const { shift } = frame;
  const places = shift ? taken.places.map((place) => applyAffine(shift, place)) : taken.places;
  const moved = { ...pattern, pins: pattern.pins.map((pin, index) => movedTo(pin, places[index]!)) };
  const framed = copy === null ? moved : inFrame(moved, frame, copy, knownLength);
  const stood = { ...framed, ...withStood(pattern, framed) };
  const removed = new Set(taken.removed.map((index) => pattern.pins[index]!.id));
  const rest = removed.size === 0 ? stood : applyChange(stood, removePins(stood, removed));
  return {
    pattern: { ...rest, pins: [...rest.pins, ...addedPins(pattern, taken, confidences, frame.shift)] },
    places,
    whole: frame.whole,
  };
}

interface Frame {
  readonly whole: Affine;
  /** Brings the sheet's corner back to the origin after the copy was put right; null where nothing was. */
  readonly shift: Affine | null;
  readonly width: number;
  readonly height: number;
}

function frameOf({ sheet }: Pattern, copy: Affine | null): Frame {
  const { width, height } = sheet ?? { width: 0, height: 0 };
  if (copy === null) return { whole: identity, shift: null, width, height };
  const corners = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: 0, y: height },
    { x: width, y: height },
  ].map((corner) => applyAffine(copy, corner));
  const box = boxOf(corners);
  const shift = translation(-box.left, -box.top);
  return { whole: compose(shift, copy), shift, width: widthOf(box), height: heightOf(box) };
}

const movedTo = (pin: Pin, { x, y }: Point): Pin => (pin.x === x && pin.y === y ? pin : { ...pin, x, y });

/** Everything that is not a pin, put right with the whole copy. */
function inFrame(
  pattern: Pattern,
  { whole, width, height }: Frame,
  copy: Affine,
  knownLength: number | null,
): Pattern {
  const follow = (anchor: Anchor): Anchor => ('pin' in anchor ? anchor : applyAffine(whole, anchor));
  const { repeat, sheet } = pattern;
  const size = Math.sqrt(Math.abs(determinant(copy)));
  return {
    ...pattern,
    marks: pattern.marks.map((mark) => mapAnchors(mark, follow)),
    areas: pattern.areas.map((area) => ({ ...area, outline: area.outline.map(follow) })),
    ...(repeat && { repeat: { ...repeat, step: applyAffine(copy, repeat.step) } }),
    ...(sheet && { sheet: { width, height } }),
    ...(knownLength !== null && measured(pattern, size, knownLength)),
  };
}

/** A known distance proves the scale; a pattern that was in pixels is in millimetres from then on. */
function measured(pattern: Pattern, size: number, length: number): Partial<Pattern> {
  const before = 'dpi' in pattern.scale ? pattern.scale.dpi : MM_PER_INCH;
  const scale: Scale = { from: 'span', dpi: before / size, length };
  if (pattern.unit === 'mm') return { scale };
  const { paper } = pattern;
  return {
    unit: 'mm',
    scale: { from: 'span', dpi: MM_PER_INCH / size, length },
    ...(paper && {
      paper: {
        ...paper,
        toPattern: compose(scaling(size), paper.toPattern),
        ...(paper.stood && {
          stood: Object.fromEntries(
            Object.entries(paper.stood).map(([id, { x, y }]) => [id, { x: x * size, y: y * size }]),
          ),
        }),
      },
    }),
  };
}

/** Remembers where each moved pin stood on the paper, so that the paper's picture can follow. */
function withStood(before: Pattern, after: Pattern): Pick<Pattern, 'paper'> | Record<string, never> {
  const { paper } = after;
  if (!paper) return {};
  // Where the unit changed, so did the numbers of every place on the paper.
  const size = before.paper ? paper.toPattern.a / before.paper.toPattern.a : 1;
  const stood: Record<string, Point> = { ...paper.stood };
  before.pins.forEach((pin, index) => {
    const now = after.pins[index]!;
    if (Object.hasOwn(stood, pin.id) || (now.x === pin.x && now.y === pin.y)) return;
    stood[pin.id] = { x: pin.x * size, y: pin.y * size };
  });
  return Object.keys(stood).length === 0 ? {} : { paper: { ...paper, stood } };
}

function addedPins(
  { pins }: Pattern,
  { added }: Taken,
  confidences: readonly number[],
  shift: Affine | null,
): Pin[] {
  const names = new Set(pins.map(({ id }) => id));
  let number = 0;
  return added.map((place, index) => {
    do number++;
    while (names.has(`added-${number}`));
    const { x, y } = shift ? applyAffine(shift, place) : place;
    return { id: `added-${number}`, x, y, confidence: confidences[index]! };
  });
}
