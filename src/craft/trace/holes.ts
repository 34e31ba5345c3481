import type { GreyPicture } from '#base/picture/grey.ts';
import { type Progress, silent } from '#base/progress.ts';
import type { Doubt } from '#pattern/pattern.ts';
import { survey } from './holes/candidates.ts';
import { type DotSize, dotSize } from './holes/dot-size.ts';
import { doubtsOf } from './holes/doubts.ts';
import { kindOf } from './holes/kind.ts';
import { judgeCandidates, withoutOverlaps } from './holes/verdict.ts';

/** A dot or pricked hole of the pattern, in pixels of the picture. */
export interface TracedHole {
  /** Of its centre; the centre of the top-left pixel is (0, 0). */
  readonly column: number;
  readonly row: number;
  readonly diameter: number;
  /** 0 to 1: how sure it is that a pin is meant here. */
  readonly confidence: number;
  /** Why it is doubtful; empty where it is not. */
  readonly doubt: readonly Doubt[];
}

export interface TracedHoles {
  /** From the top down, then from left to right. */
  readonly holes: readonly TracedHole[];
  /** What the page's dots measure, pixels; 0 where none were found. */
  readonly dotDiameter: number;
  readonly kind: 'printed' | 'pricked';
  readonly notes: readonly TraceNote[];
}

export type TraceNote = 'no-dots' | 'few-dots' | 'light-dots' | 'low-resolution';

export interface TraceOptions {
  /** Pixels an inch, where known: only dots of a size usual for lace are then looked for. */
  readonly dpi?: number;
  readonly progress?: Progress;
}

/** Candidates less likely than this are not worth a look. */
const WORTH = 0.2;
/** From here on nothing speaks against it. */
const SURE = 0.9;

/** Fewer discs than this are too few to say that a page has dark dots at all, or what its dots are like. */
const FEW = 12;
/** Dots narrower than this many pixels are found, but not placed well. */
const NARROW = 4;

/**
 * Finds the pins of a paper pattern or an old pricked card: dark dots, or light ones where the picture has only
 * those. A picture without dots gives an empty result and says so.
 */
export function findHoles(picture: GreyPicture, options: TraceOptions = {}): TracedHoles {
  const progress = options.progress ?? silent;
  progress('measure the dots', 0);
  const dark = dotSize(picture, options.dpi);
  if (dark && dark.discs >= FEW) return holesOfSize(picture, dark, progress, []);
  const negative = negativeOf(picture);
  const light = dotSize(negative, options.dpi);
  if (light && light.discs > 2 * (dark?.discs ?? 0)) {
    return holesOfSize(negative, light, progress, ['light-dots']);
  }
  if (dark) return holesOfSize(picture, dark, progress, []);
  return { holes: [], dotDiameter: 0, kind: 'printed', notes: ['no-dots'] };
}

function holesOfSize(
  picture: GreyPicture,
  { diameter }: DotSize,
  progress: Progress,
  notes: readonly TraceNote[],
): TracedHoles {
  const seen = survey(picture, diameter, progress);
  progress('judge the dots', 0.9);
  const judged = withoutOverlaps(judgeCandidates(seen, diameter), diameter);
  const holes = judged
    .filter(({ confidence }) => confidence >= WORTH)
    .map(
      ({ candidate, confidence, evidence }): TracedHole => ({
        column: candidate.column,
        row: candidate.row,
        diameter: candidate.diameter,
        confidence,
        doubt: confidence < SURE ? doubtsOf(candidate, evidence) : [],
      }),
    )
    .sort((a, b) => a.row - b.row || a.column - b.column);
  const sure = holes.filter(({ confidence }) => confidence >= SURE);
  progress('judge the dots', 1);
  return {
    holes,
    dotDiameter: holes.length === 0 ? 0 : diameter,
    kind: kindOf(picture, sure),
    notes: [...notes, ...notesOn(sure.length, holes.length, diameter)],
  };
}

function notesOn(sure: number, all: number, diameter: number): TraceNote[] {
  if (all === 0) return ['no-dots'];
  const notes: TraceNote[] = [];
  if (sure < FEW) notes.push('few-dots');
  if (diameter < NARROW) notes.push('low-resolution');
  return notes;
}

const negativeOf = ({ width, height, grey }: GreyPicture): GreyPicture => ({
  width,
  height,
  grey: grey.map((value) => 255 - value),
});
