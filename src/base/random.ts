/** A source of chance that can be replayed: every call gives the next number in [0, 1). */
export type Random = () => number;

/**
 * Mulberry32, a small 32-bit generator (T. Ettinger, public domain). The same seed gives the same numbers
 * on every machine, since it stays within 32-bit integer arithmetic.
 */
export function seededRandom(seed: number): Random {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A normally distributed number with mean 0 and standard deviation 1 (Box and Muller 1958). */
export function normal(random: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random()));
  return radius * Math.cos(2 * Math.PI * random());
}
