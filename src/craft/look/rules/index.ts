import type { Rule } from '../rule.ts';
import { areaWithoutStitch } from './area-without-stitch.ts';
import { bowedFootside } from './bowed-footside.ts';
import { doubledPins } from './doubled-pins.ts';
import { doubtfulPin } from './doubtful-pin.ts';
import { gapInLattice } from './gap-in-lattice.ts';
import { gapInRepeat } from './gap-in-repeat.ts';
import { gapInRun } from './gap-in-run.ts';
import { gapInSymmetry } from './gap-in-symmetry.ts';
import { hiddenUnderFilm } from './hidden-under-film.ts';
import { looseMark } from './loose-mark.ts';
import { nearlyTouching } from './nearly-touching.ts';
import { noProvenance } from './no-provenance.ts';
import { noScale } from './no-scale.ts';
import { offSheet } from './off-sheet.ts';
import { repeatEnds } from './repeat-ends.ts';
import { strayPin } from './stray-pin.ts';
import { unevenSpacing } from './uneven-spacing.ts';

/** Every rule, in the order in which findings are listed. A new rule joins by its own file and a line here. */
export const rules: readonly Rule[] = [
  noScale,
  offSheet,
  doubledPins,
  nearlyTouching,
  gapInLattice,
  gapInRun,
  gapInRepeat,
  gapInSymmetry,
  strayPin,
  doubtfulPin,
  unevenSpacing,
  bowedFootside,
  repeatEnds,
  looseMark,
  areaWithoutStitch,
  hiddenUnderFilm,
  noProvenance,
];
