/** One size of a gauge: what it is called and how thick it is, mm. */
export interface GaugeSize {
  readonly label: string;
  readonly mm: number;
}

/** A way to number thicknesses. */
export interface Gauge {
  readonly name: string;
  /** What stands behind the figures: a published standard, or what makers print, who differ among themselves. */
  readonly source: 'standard' | 'makers';
  /** By thickness, thinnest first. */
  readonly sizes: readonly GaugeSize[];
}

/** A gauge from its sizes in any order. */
export const gaugeOf = (name: string, source: Gauge['source'], sizes: readonly GaugeSize[]): Gauge => ({
  name,
  source,
  sizes: [...sizes].sort((a, b) => a.mm - b.mm || a.label.localeCompare(b.label, 'en')),
});

/** The size of a gauge nearest to a diameter in mm; of two as near, the thinner. */
export function nearestSize({ sizes }: Gauge, mm: number): GaugeSize {
  const [first, ...rest] = sizes;
  if (!first) throw new RangeError('nearestSize: a gauge without sizes');
  return rest.reduce((best, size) => (Math.abs(size.mm - mm) < Math.abs(best.mm - mm) ? size : best), first);
}
