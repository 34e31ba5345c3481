import type { StageId } from '../stage.ts';

interface Mending {
  readonly id: StageId;
  readonly title: string;
}

const PAPER: Mending = { id: 'paper', title: 'Paper' };
const PINS: Mending = { id: 'pins', title: 'Pins' };
const STRAIGHTEN: Mending = { id: 'straighten', title: 'Straighten' };
const MARK: Mending = { id: 'mark', title: 'Mark' };

const MENDINGS: Readonly<Record<string, Mending>> = {
  'no-scale': PAPER,
  'doubled-pins': PINS,
  'doubtful-pin': PINS,
  'gap-in-lattice': PINS,
  'gap-in-repeat': PINS,
  'gap-in-run': PINS,
  'gap-in-symmetry': PINS,
  'nearly-touching': PINS,
  'stray-pin': PINS,
  'bowed-footside': STRAIGHTEN,
  'uneven-spacing': STRAIGHTEN,
  'area-without-stitch': MARK,
  'loose-mark': MARK,
};

/** The stage at which what a rule found is mended; none where it is a matter of choice. */
export const mendedAt = (rule: string): Mending | null =>
  Object.hasOwn(MENDINGS, rule) ? MENDINGS[rule]! : null;

/** Whether a rule found that a pin is missing: then those that it names stand round the gap. */
export const isGap = (rule: string): boolean => rule.startsWith('gap-');
