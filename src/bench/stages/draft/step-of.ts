import type { Figure } from '#pattern/recipe/walk.ts';

/** The figures one step below and above; null beyond what it can be. */
export interface FigureStep {
  readonly less: number | null;
  readonly more: number | null;
}

/** How a figure is stepped by its buttons; null where it is no number. */
export function stepOf({ takes, value }: Pick<Figure, 'takes' | 'value'>): FigureStep | null {
  if (
    typeof value !== 'number' ||
    takes.kind === 'word' ||
    takes.kind === 'yes-or-no' ||
    takes.kind === 'text'
  )
    return null;
  const { kind, least, most } = takes;
  const step = kind === 'count' ? 1 : kind === 'length' ? lengthStep(value) : most <= 1 ? 0.05 : 1;
  // From 4.7 by halves the next are 4.5 and 5, and not 4.2 and 5.2.
  const less = clean((Math.ceil(value / step - SLACK) - 1) * step);
  const more = clean((Math.floor(value / step + SLACK) + 1) * step);
  return { less: less < least ? null : less, more: more > most ? null : more };
}

/** Fine where a length is short. */
const lengthStep = (mm: number): number => (Math.abs(mm) < 2 ? 0.1 : Math.abs(mm) < 20 ? 0.5 : 1);

const SLACK = 1e-9;
const clean = (value: number): number => Number(value.toFixed(6));
