import type { Candidate, Survey } from './candidates.ts';
import { type Evidence, evidenceOf, type PageDots } from './evidence.ts';
import { confidenceAlone, confidenceAmong } from './judge.ts';
import { type LetteringLine, letteringLines, lettersAt } from './lettering.ts';
import { regularityOf } from './neighbours.ts';

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
    if (confidence > 0.95 && candidate.region >= 0) pins[candidate.region]!++;
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
export function withoutOverlaps(items: readonly Judged[], diameter: number): Judged[] {
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
