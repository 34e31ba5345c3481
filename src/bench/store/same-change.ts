import { type Change, LISTS, PARTS } from '#pattern/change/change.ts';
import { sameValue } from '#pattern/equal.ts';
import { nextTask } from '../parts/next-task.ts';

/** Records that are compared without a break. */
const SLICE = 2000;

/** Whether two changes say the same. A change of every pin is long to read: the page sees to other things in between. */
export async function sameChange(one: Change | undefined, other: Change | undefined): Promise<boolean> {
  if (!one || !other) return one === other;
  for (const part of PARTS) {
    if (!sameValue(one[part], other[part])) return false;
  }
  for (const list of LISTS) {
    const [edit, otherEdit] = [one[list], other[list]];
    if (!edit || !otherEdit) {
      if (edit !== otherEdit) return false;
      continue;
    }
    for (const kind of ['added', 'updated', 'removed'] as const) {
      if (!(await sameRecords(edit[kind], otherEdit[kind]))) return false;
    }
  }
  return true;
}

async function sameRecords(some: readonly unknown[], others: readonly unknown[]): Promise<boolean> {
  if (some.length !== others.length) return false;
  for (let first = 0; first < some.length; first += SLICE) {
    if (!sameValue(some.slice(first, first + SLICE), others.slice(first, first + SLICE))) return false;
    if (first + SLICE < some.length) await nextTask();
  }
  return true;
}
