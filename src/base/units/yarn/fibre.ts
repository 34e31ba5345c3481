/** What a thread is spun of. */
export type Fibre =
  | 'linen'
  | 'cotton'
  | 'silk'
  | 'wool'
  | 'viscose'
  | 'acetate'
  | 'nylon'
  | 'polyester'
  | 'acrylic'
  | 'polypropylene';

/**
 * Density of the fibre itself at 65 % relative humidity, g/cm3: W. E. Morton & J. W. S. Hearle, Physical Properties
 * of Textile Fibres, table 5.1; flax: Handbook of Properties of Textile and Technical Fibres, table 1.1.
 */
export const fibreDensity: Readonly<Record<Fibre, number>> = {
  linen: 1.53,
  cotton: 1.52,
  silk: 1.34,
  wool: 1.31,
  viscose: 1.49,
  acetate: 1.32,
  nylon: 1.14,
  polyester: 1.39,
  acrylic: 1.19,
  polypropylene: 0.91,
};

export const fibres = Object.keys(fibreDensity) as readonly Fibre[];
