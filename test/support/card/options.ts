/** How a card is pricked, held and photographed. Everything has a default. */
export interface CardOptions {
  readonly width?: number;
  readonly height?: number;
  /** At the middle of the card; by default so that it fills most of the picture. */
  readonly pixelsPerMm?: number;
  /** Degrees. */
  readonly turn?: number;
  readonly tilt?: number;
  /** Which way it is tilted, degrees from the picture's x. */
  readonly tiltTowards?: number;
  /** The card turned over. */
  readonly mirrored?: boolean;
  /** Where the middle of the card is, from the middle of the picture, as shares of its width and height. */
  readonly shift?: readonly [number, number];
  readonly k1?: number;
  /** What is behind: an even light, a window with bars and trees, or a lamp whose light leaks round the edge. */
  readonly scene?: 'lightbox' | 'window' | 'lamp' | 'front';
  readonly hole?: number;
  /** Of sound holes about their pins, mm in x and in y, cut off at 0.12 mm. */
  readonly sigma?: number;
  readonly thickness?: number;
  /** Standard deviation of the blur, pixels. */
  readonly blur?: number;
  /** Standard deviation of the grain, greys. */
  readonly noise?: number;
  readonly specks?: number;
  readonly scratches?: number;
  /** Card beyond the outermost holes, mm. */
  readonly border?: number;
  readonly faults?: Partial<FaultCounts>;
  /** A needle that leant to the right by so many degrees along the lower third of the card. */
  readonly leanBelow?: number;
}

export interface FaultCounts {
  readonly missing: number;
  readonly offCentre: number;
  readonly oval: number;
  readonly extra: number;
}

export type CardSettings = Required<Omit<CardOptions, 'faults' | 'pixelsPerMm'>> & {
  readonly faults: FaultCounts;
  readonly pixelsPerMm: number | null;
};

export const settle = (options: CardOptions): CardSettings => ({
  width: 1600,
  height: 1200,
  pixelsPerMm: null,
  turn: 0,
  tilt: 0,
  tiltTowards: 0,
  mirrored: false,
  shift: [0, 0],
  k1: 0,
  scene: 'lightbox',
  hole: 0.56,
  sigma: 0.04,
  thickness: 0.12,
  blur: 0.9,
  noise: 3,
  specks: 12,
  scratches: 3,
  border: 10,
  leanBelow: 0,
  ...options,
  faults: { missing: 4, offCentre: 4, oval: 4, extra: 3, ...options.faults },
});
