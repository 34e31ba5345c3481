/** What the pins of each part are called in the whole. */
export type PinNames = readonly ReadonlyMap<string, string>[];

/** What stands before the ids of a part, counted from 0: nothing for the first, `b2.` for the second. */
export const prefixOf = (part: number): string => (part === 0 ? '' : `b${part + 1}.`);

/** Pins of two parts that stand nearer than this are one pin, mm. Files carry 0.001. */
export const JOIN_WITHIN = 0.01;
