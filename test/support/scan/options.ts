export type ScanStyle = 'print' | 'photocopy' | 'card';

export interface ScanOptions {
  readonly style?: ScanStyle;
  readonly dpi?: number;
  /** Size of the sheet, mm; by default the pattern with a margin round it. */
  readonly page?: { readonly width: number; readonly height: number };
  readonly margin?: number;
  /** Diameter of the dots or holes, mm. */
  readonly dot?: number;
  /** Width of the working lines, mm. */
  readonly line?: number;
  /** How the page lies, degrees, and what a copier did to its size. */
  readonly skew?: number;
  readonly scaleX?: number;
  readonly scaleY?: number;
  readonly film?: 'blue' | 'grey';
  readonly title?: string;
  readonly notes?: readonly string[];
  readonly border?: boolean;
  /** How many small numbers stand beside pins. */
  readonly numbers?: number;
  /** Standard deviation of the blur, pixels. */
  readonly blur?: number;
  /** How far edges are shaken, pixels. */
  readonly rough?: number;
  /** How far ink spreads at edges, pixels. */
  readonly bleed?: number;
  /** Share of the working lines' length that has faded away. */
  readonly breaks?: number;
  /** Specks a square centimetre. */
  readonly speckle?: number;
  /** Standard deviation of the sensor's noise, levels of 255. */
  readonly noise?: number;
  /** How much darker the far side of the sheet is lit, 0 to 1. */
  readonly shade?: number;
  /** How dark the ink is, 0 to 1. */
  readonly ink?: number;
  readonly paper?: readonly [number, number, number];
}

export type ScanSettings = Required<Omit<ScanOptions, 'page' | 'film' | 'title'>> &
  Pick<ScanOptions, 'page' | 'film' | 'title'>;

/** Every setting, with what is usual for the style where nothing is said. */
export const settle = (options: ScanOptions): ScanSettings => ({
  ...usual,
  ...byStyle[options.style ?? 'print'],
  ...options,
});

const usual: ScanSettings = {
  style: 'print',
  dpi: 300,
  margin: 14,
  dot: 0.6,
  line: 0.19,
  skew: 0,
  scaleX: 1,
  scaleY: 1,
  notes: [],
  border: false,
  numbers: 6,
  blur: 0.6,
  rough: 0.35,
  bleed: 0,
  breaks: 0.02,
  speckle: 0.2,
  noise: 2.5,
  shade: 0.04,
  ink: 0.92,
  paper: [243, 242, 237],
};

const byStyle: Record<ScanStyle, Partial<ScanSettings>> = {
  print: {},
  photocopy: {
    rough: 0.6,
    bleed: 0.25,
    breaks: 0.1,
    speckle: 2,
    noise: 4,
    shade: 0.1,
    ink: 0.86,
    paper: [236, 236, 236],
  },
  card: {
    rough: 0.5,
    breaks: 0.18,
    speckle: 0.5,
    noise: 4,
    shade: 0.06,
    ink: 0.52,
    dot: 0.72,
    paper: [146, 104, 62],
  },
};
