/** A picture with more pixels is refused before it is unpacked. */
export const MOST_PIXELS = 100_000_000;
