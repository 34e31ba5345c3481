import type { Candidate } from './candidates.ts';
import type { Regularity } from './neighbours.ts';
import type { Traits } from './traits.ts';

/** What speaks for and against a candidate being a pin. Each is a plain number near 0 to 1. */
export interface Evidence {
  readonly scatter: number;
  readonly inset: number;
  readonly close: number;
  readonly bulge: number;
  readonly stands: number;
  readonly lean: number;
  readonly over: number;
  readonly beyond: number;
  readonly lines: number;
  readonly bare: number;
  readonly long: number;
  readonly alone: number;
  readonly offDepth: number;
  readonly offSize: number;
  readonly between: number;
  readonly onward: number;
  readonly spacing: number;
  readonly crowded: number;
  readonly lettering: number;
}

/** What the page's clear dots are like. */
export interface PageDots {
  readonly size: number;
  readonly depth: number;
}

export function evidenceOf(
  candidate: Candidate,
  page: PageDots,
  regularity: Regularity,
  letters: number,
): Evidence {
  const { traits, long } = candidate;
  return {
    scatter: Math.min(traits.scatter, 0.6),
    inset: traits.inset,
    close: traits.close,
    bulge: traits.bulge,
    stands: traits.stands,
    lean: traits.lean,
    over: clamp(traits.over, -0.5, 1),
    beyond: beyondLines(traits, page),
    lines: Math.min(traits.lines, 6) / 6,
    bare: traits.lines === 0 ? 1 : 0,
    long: Math.log2(clamp(long, 1, 16)) / 4,
    alone: long < 1.5 ? 1 : 0,
    offDepth: Math.abs(Math.log(clamp(traits.depth / page.depth, 0.2, 2))),
    offSize: Math.abs(Math.log(clamp(traits.size / page.size, 0.4, 2.5))),
    between: regularity.between,
    onward: regularity.onward,
    spacing: regularity.spacing,
    crowded: clamp((2 - regularity.apart) / 1.4, 0, 1),
    lettering: Math.min(letters, 5) / 5,
  };
}

const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(high, value));

/**
 * How much darker the middle is than where lines like those that run into it merely meet: ink over ink lets the
 * product of what each lets through pass.
 */
function beyondLines({ depth, over, lines }: Traits, page: PageDots): number {
  const middle = Math.min(1, depth / page.depth);
  const line = clamp(middle * (1 - over), 0, 1);
  const layers = lines <= 1 ? lines : lines <= 4 ? 2 : 3;
  return middle - (1 - (1 - line) ** layers);
}
