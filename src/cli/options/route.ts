import { badOption } from './bad-option.ts';
import { lengthIn } from './length.ts';
import { needed } from './needed.ts';

/** The flags that say how the holes are made; the program lets neither `hand` and `machine` nor `hand` and `spread` meet. */
export interface RouteFlags {
  readonly hand?: true;
  readonly machine?: true;
  readonly spread?: true | string;
}

/** By hand or by machine: one of them must be said, since nobody can guess it. */
export const byOf = ({ hand, machine }: RouteFlags): 'hand' | 'machine' =>
  needed(
    '--hand or --machine',
    hand ? 'hand' : machine && 'machine',
    'the one that says how the holes are made',
  );

/** `--spread`, or `--spread 8`: the least distance from a hole to the next, mm; null without it. */
export function spreadOf({ spread }: RouteFlags): number | null {
  if (spread === undefined) return null;
  if (spread === true) return USUAL_SPREAD;
  return lengthIn(spread) ?? badOption('--spread', spread, 'a length such as 8');
}

/** mm; common practice, no source. */
const USUAL_SPREAD = 5;
