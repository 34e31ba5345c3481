import type { Extent } from '#paper/cut/options.ts';

/** The unit and the size, mm, for the end of a file's name: whoever opens it can see whether it came in true. */
export const sizeInName = ({ width, height }: Extent, unit: 'mm' | 'in'): string =>
  `-${unit}-${Math.ceil(width)}x${Math.ceil(height)}`;
