import type { GreyPicture } from '#base/picture/grey.ts';
import { type Progress, silent } from '#base/progress.ts';
import type { Doubt } from '#pattern/pattern.ts';
import { type Candidate, type Survey, survey } from './candidates.ts';
import { dotSize } from './dot-size.ts';
import { doubtsOf } from './doubts.ts';
import { type Evidence, evidenceOf, type PageDots } from './evidence.ts';
import { confidenceAlone, confidenceAmong } from './judge.ts';
import { type LetteringLine, letteringLines, lettersAt } from './lettering.ts';
import { regularityOf } from './neighbours.ts';

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

/** Finds the pins of a paper pattern or an old pricked card. */
export function findHoles(picture: GreyPicture, options: TraceOptions = {}): TracedHoles {
  const progress = options.progress ?? silent;
  progress('measure the dots', 0);
  const size = dotSize(picture, options.dpi);
  if (!size) return { holes: [], dotDiameter: 0, kind: 'printed', notes: ['no-dots'] };
  const seen = survey(picture, size.diameter, progress);
  progress('judge the dots', 0.9);
  const judged = withoutOverlaps(judgeCandidates(seen, size.diameter), size.diameter);
  const holes: TracedHole[] = [];
  for (const { candidate, confidence, evidence } of judged) {
    if (confidence < WORTH) continue;
    holes.push({
      column: candidate.column,
      row: candidate.row,
      diameter: 2 * candidate.rim.radius,
      confidence,
      doubt: confidence < 0.9 ? doubtsOf(candidate, evidence) : [],
    });
  }
  holes.sort((a, b) => a.row - b.row || a.column - b.column);
  progress('judge the dots', 1);
  const notes: TraceNote[] = [];
  if (holes.length === 0) notes.push('no-dots');
  if (size.diameter < 4) notes.push('low-resolution');
  return { holes, dotDiameter: size.diameter, kind: 'printed', notes };
}

export interface Judged {
  readonly candidate: Candidate;
  readonly evidence: Evidence;
  readonly confidence: number;
}

/**
 * Judges each candidate by itself, and then beside what the clear ones tell of the page. Candidates that overlap
 * are all still there.
 */
export function judgeCandidates(seen: Survey, diameter: number): Judged[] {
  const neutral = { between: 0, onward: 0, spacing: 0, apart: 3 };
  const usual = { size: 1, depth: 0.9 };
  const alone = seen.candidates.map((candidate): Judged => {
    const evidence = evidenceOf(candidate, usual, neutral, 0);
    return { candidate, evidence, confidence: confidenceAlone(evidence) };
  });
  return judgeAmong(seen, alone, diameter);
}

function judgeAmong(seen: Survey, before: readonly Judged[], diameter: number): Judged[] {
  const clear = withoutOverlaps(before, diameter).filter(({ confidence }) => confidence > 0.5);
  const page = pageDots(clear.map(({ candidate }) => candidate));
  const regularity = regularityOf(before.map(placed), clear.map(placed), diameter);
  const lines = linesOf(seen, before, diameter);
  return before.map(({ candidate }, index) => {
    const letters = lettersAt(lines, candidate.column / seen.factor, candidate.row / seen.factor);
    const evidence = evidenceOf(candidate, page, regularity[index]!, letters);
    return { candidate, evidence, confidence: confidenceAmong(evidence) };
  });
}

const placed = ({ candidate, confidence }: Judged) => ({
  column: candidate.column,
  row: candidate.row,
  likely: confidence,
});

function linesOf(seen: Survey, judged: readonly Judged[], diameter: number): LetteringLine[] {
  const pins = new Uint16Array(seen.regions.length);
  for (const { candidate, confidence } of judged) {
    if (confidence > 0.7 && candidate.region >= 0) pins[candidate.region]!++;
  }
  return letteringLines(seen.regions, diameter / seen.factor, (region) => pins[region]!);
}

function pageDots(clear: readonly Candidate[]): PageDots {
  if (clear.length < 3) return { size: 1, depth: 0.9 };
  return {
    size: median(clear.map(({ traits }) => traits.size)),
    depth: Math.max(0.2, median(clear.map(({ traits }) => traits.depth))),
  };
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;

/** Two pins never stand closer than this many dot diameters. */
const APART = 0.65;

/** Of candidates that overlap only the likeliest stays. */
function withoutOverlaps(items: readonly Judged[], diameter: number): Judged[] {
  const side = APART * diameter;
  const cells = new Map<number, Candidate[]>();
  const kept: Judged[] = [];
  for (const item of [...items].sort((a, b) => b.confidence - a.confidence)) {
    const { column, row } = item.candidate;
    const x = Math.floor(column / side);
    const y = Math.floor(row / side);
    let clash = false;
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const other of cells.get((y + dy) * 65536 + x + dx) ?? []) {
          if (Math.hypot(other.column - column, other.row - row) < side) clash = true;
        }
      }
    }
    if (clash) continue;
    const cell = y * 65536 + x;
    const list = cells.get(cell);
    if (list) list.push(item.candidate);
    else cells.set(cell, [item.candidate]);
    kept.push(item);
  }
  return kept;
}
