import { distance, type Point } from '#base/geometry/point.ts';
import type { Pattern, RunRole } from '#pattern/pattern.ts';
import { pinIndex } from '#pattern/pins.ts';
import type { Regularity } from '#pattern/structure.ts';
import { groundPins } from './ground-pins.ts';
import { median } from './spacing.ts';

/** A run as it is checked: declared in the pattern, or found among the pins. */
export interface CheckedRun {
  readonly role: RunRole | 'found';
  readonly straight: boolean;
  readonly closed: boolean;
  readonly even: boolean;
  /** Indices in order, without pins that double an earlier one. */
  readonly pins: readonly number[];
  /** Median distance from pin to pin along it. */
  readonly spacing: number;
}

/** Declared runs first; a found one only where neither a declared run nor the ground speaks for most of its pins. */
export function runsToCheck(
  pattern: Pattern,
  { structures }: Regularity,
  distinct: ReadonlySet<number>,
): CheckedRun[] {
  const { pins, runs } = pattern;
  const indexOf = pinIndex(pattern);
  const checked = (run: Omit<CheckedRun, 'spacing'>): CheckedRun => {
    const kept = run.pins.filter((index) => distinct.has(index));
    const spacing = median(stepsAlong(kept, run.closed, pins).map(({ length }) => length));
    return { ...run, pins: kept, spacing };
  };
  const declared = runs.map((run) =>
    checked({
      role: run.role,
      straight: run.shape === 'line',
      closed: run.closed,
      even: run.even,
      pins: run.pins.flatMap((id) => indexOf.get(id) ?? []),
    }),
  );
  const ground = groundPins(pattern);
  const spokenFor = new Set(declared.flatMap((run) => run.pins));
  const found = structures.flatMap((structure) => {
    if (structure.kind !== 'run') return [];
    // a row of ground pins that bends or changes its step where the ground does is no run of its own
    const known = structure.pins.filter(
      (index) => spokenFor.has(index) || ground.has(pins[index]!.id),
    ).length;
    if (known * 2 > structure.pins.length) return [];
    return checked({
      role: 'found',
      straight: structure.shape === 'line',
      closed: structure.closed,
      even: structure.even,
      pins: structure.pins,
    });
  });
  return [...declared, ...found].filter((run) => run.pins.length >= 2);
}

/** From each pin of a run to the next, and from the last to the first where it is closed. */
export function stepsAlong(
  run: readonly number[],
  closed: boolean,
  pins: readonly Point[],
): { readonly from: number; readonly to: number; readonly length: number }[] {
  const nexts = closed && run.length > 2 ? [...run.slice(1), run[0]!] : run.slice(1);
  return nexts.map((to, at) => {
    const from = run[at]!;
    return { from, to, length: distance(pins[from]!, pins[to]!) };
  });
}

/** How many pins a step of a run leaves out: 0 where it is one spacing, or no whole number of them. */
export function pinsLacking(step: number, spacing: number, tolerance: number): number {
  const spacings = Math.round(step / spacing);
  const whole = Math.abs(step - spacings * spacing) <= tolerance * spacing * Math.max(1, spacings);
  return whole && spacings >= 2 ? spacings - 1 : 0;
}
