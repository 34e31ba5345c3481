import type { Point } from '#base/geometry/point.ts';
import type { Pattern, Pin } from '../pattern.ts';
import { pinsById } from '../pins.ts';
import type { Change } from './change.ts';
import { freshIds } from './fresh-ids.ts';
import { byId } from './join.ts';

/** The change that puts a pin where a person wants it, after all others, and the id that it gets. */
export function addPin(pattern: Pattern, { x, y }: Point): { readonly change: Change; readonly id: string } {
  const [id] = freshIds(pattern.pins, 'p', 1);
  const record: Pin = { id: id!, x, y };
  const added = [{ index: pattern.pins.length, record }];
  return { change: { pins: { added, updated: [], removed: [] } }, id: record.id };
}

/**
 * The change that gives pins new records, such as other places.
 * Throws where the pattern has no pin of that id.
 */
export function updatePins(pattern: Pattern, records: readonly Pin[]): Change {
  // Only those that are named: one pin must be quick to move among a hundred thousand.
  const named = new Set(records.map(({ id }) => id));
  const pins = pinsById({ pins: pattern.pins.filter(({ id }) => named.has(id)) });
  const updated = records.map((to) => {
    const from = pins.get(to.id);
    if (!from) throw new RangeError(`updatePins: no pin "${to.id}"`);
    return [from, to] as const;
  });
  return { pins: { added: [], updated: updated.toSorted(byId), removed: [] } };
}

/** A pin as a person vouches for it: no doubt is left, and nobody asks how sure a finder was. */
export const vouchedFor = ({ confidence: _confidence, doubt: _doubt, ...pin }: Pin): Pin => pin;
