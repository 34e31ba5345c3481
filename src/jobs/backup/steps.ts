import { applyFitting, type Change, misfit, undoChange } from '#pattern/change/change.ts';
import { roundChange } from '#pattern/change/round.ts';
import { readStep, type Step, writeStep } from '#pattern/change/step.ts';
import { findBrokenReference } from '#pattern/file/references.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** What was done to a pattern, the oldest first, and what was undone of it, the next to be made again first. */
export interface Steps {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

export const NO_STEPS: Steps = { past: [], future: [] };

/** Most steps of one design, both ways together. */
export const MOST_STEPS = 1_000;

/** Most letters that they may take: a step of a large pattern can be as long as its file. */
const MOST_LETTERS = 40_000_000;

/** The steps of a design a line each, and how many of them are done. Where they are too many, the farthest are left. */
export function writeSteps({ past, future }: Steps): { readonly text: string; readonly done: number } {
  let letters = 0;
  let count = 0;
  const nearest = (steps: Iterable<Step>): string[] => {
    const lines: string[] = [];
    for (const { change, words } of steps) {
      // A pattern is rounded in its file, and its steps lead to it and from it only where they are rounded too.
      const line = writeStep({ change: roundChange(change), words });
      letters += line.length + 1;
      count++;
      if (letters > MOST_LETTERS || count > MOST_STEPS) break;
      lines.push(line);
    }
    return lines;
  };
  const back = nearest([...past].reverse()).reverse();
  const forth = nearest(future);
  return { text: [...back, ...forth].join('\n'), done: back.length };
}

/**
 * The steps that lead to a pattern and from it, or null where one of them is damaged, or was not made for it, or would
 * leave a broken pattern behind: then none is to be trusted.
 */
export function readSteps(text: string, done: number, pattern: Pattern): Steps | null {
  if (text.length > MOST_LETTERS) return null;
  const lines = text === '' ? [] : text.split('\n');
  if (lines.length > MOST_STEPS || done > lines.length) return null;
  const steps: Step[] = [];
  for (const line of lines) {
    const step = readStep(line);
    if (!step) return null;
    steps.push(step);
  }
  const [past, future] = [steps.slice(0, done), steps.slice(done)];
  const back = past.map(({ change }) => undoChange(change)).reverse();
  const forth = future.map(({ change }) => change);
  return leads(pattern, back) && leads(pattern, forth) ? { past, future } : null;
}

/** Whether references may be broken after a change that fits. Moved pins break none, and there can be many in a pattern. */
const mayBreak = ({ pins, runs, marks, areas, repeat, paper }: Change): boolean =>
  [runs, marks, areas, repeat, paper].some((part) => part !== undefined) || (pins?.removed.length ?? 0) > 0;

/** Whether changes fit one after the other, each leaving a whole pattern behind. */
function leads(pattern: Pattern, changes: readonly Change[]): boolean {
  let now = pattern;
  for (const change of changes) {
    if (misfit(now, change)) return false;
    now = applyFitting(now, change);
    if (mayBreak(change) && findBrokenReference(now)) return false;
  }
  return true;
}
