import { add, type Point, subtract } from '#base/geometry/point.ts';
import { anchorPoint, anchorsOf, mapAnchors } from '#pattern/anchors.ts';
import { sameValue } from '#pattern/equal.ts';
import type { Anchor, Area, Mark, Pin, Run } from '#pattern/pattern.ts';
import type { Carry } from './carry.ts';
import { mergedOrder } from './order.ts';

/** A record as it was drafted, as the hand left it, and as it is drafted anew. */
export interface Three<Item> {
  readonly old: Item;
  readonly mine: Item;
  readonly fresh: Item;
}

/** What the places of a record's anchors are reckoned by: the pins of both drafts, and where free places go. */
export interface Ground {
  readonly old: ReadonlyMap<string, Pin>;
  readonly fresh: ReadonlyMap<string, Pin>;
  readonly carry: Carry;
}

/** Field by field: what the hand changed is kept, all else is as it is drafted anew. */
export function mergedFields<Item extends object>({ old, mine, fresh }: Three<Item>): Item {
  const result = { ...fresh } as Record<string, unknown>;
  const [was, is] = [old as Record<string, unknown>, mine as Record<string, unknown>];
  for (const key of new Set([...Object.keys(was), ...Object.keys(is)])) {
    if (sameValue(was[key], is[key])) continue;
    if (Object.hasOwn(is, key)) result[key] = is[key];
    else delete result[key];
  }
  return result as Item;
}

/** A pin that was moved keeps its offset from the drafted place. */
export const mergedPin = (three: Three<Pin>): Pin => ({
  ...mergedFields(three),
  ...offset(three.old, three.mine, three.fresh),
});

/** The pins of a run are merged one by one, so that a run that was mended grows and shrinks with the figures. */
export function mergedRun(three: Three<Run>): Run {
  const { old, mine, fresh } = three;
  const lists = [old.pins, mine.pins, fresh.pins];
  const once = lists.every((pins) => new Set(pins).size === pins.length);
  const pins = once ? mergedOrder(old.pins, mine.pins, fresh.pins) : mine.pins;
  return { ...mergedFields(three), ...(!sameValue(old.pins, mine.pins) && { pins }) };
}

export function mergedMark(three: Three<Mark>, ground: Ground): Mark {
  const { old, mine, fresh } = three;
  const lists = [anchorsOf(old), anchorsOf(mine), anchorsOf(fresh)];
  const alike = lists.every(({ length }) => length === lists[1]!.length);
  if (old.kind !== mine.kind || mine.kind !== fresh.kind || !alike) return carriedMark(mine, ground.carry);
  const anchors = mergedAnchors(lists as [Anchor[], Anchor[], Anchor[]], ground);
  let next = 0;
  return mapAnchors(mergedFields(three), () => anchors[next++]!);
}

export function mergedArea(three: Three<Area>, ground: Ground): Area {
  const { old, mine, fresh } = three;
  const lists = [old.outline, mine.outline, fresh.outline] as const;
  const alike = lists.every(({ length }) => length === mine.outline.length);
  // An outline that the hand left alone follows the figures; one with other corners than were drafted is the hand's own.
  if (sameValue(old.outline, mine.outline)) return mergedFields(three);
  const outline = alike
    ? mergedAnchors(lists, ground)
    : mine.outline.map((anchor) => carried(anchor, ground.carry));
  return { ...mergedFields(three), outline };
}

export const carriedMark = (mark: Mark, carry: Carry): Mark =>
  mapAnchors(mark, (anchor) => carried(anchor, carry));

export const carriedArea = (area: Area, carry: Carry): Area => ({
  ...area,
  outline: area.outline.map((anchor) => carried(anchor, carry)),
});

const carried = (anchor: Anchor, carry: Carry): Anchor => ('pin' in anchor ? anchor : carry(anchor));

function mergedAnchors(
  [old, mine, fresh]: readonly [readonly Anchor[], readonly Anchor[], readonly Anchor[]],
  ground: Ground,
): Anchor[] {
  return mine.map((anchor, at) => {
    const [was, becomes] = [old[at]!, fresh[at]!];
    if (sameValue(was, anchor)) return becomes;
    if ('pin' in anchor) return anchor;
    return offset(anchorPoint(ground.old, was), anchor, anchorPoint(ground.fresh, becomes));
  });
}

const offset = (was: Point, is: Point, becomes: Point): Point => add(becomes, subtract(is, was));
