import type { RepeatTrouble } from '#craft/size/repeats.ts';
import type { CalibrateTrouble } from '#paper/calibrate/factors.ts';
import type { CutTrouble } from '#paper/cut/options.ts';
import type { PrintTrouble } from '#paper/sheet/options.ts';
import type { ContainerTrouble } from '#pattern/container/trouble.ts';
import type { PatternTrouble } from '#pattern/trouble.ts';
import type { BackupTrouble } from '../backup/trouble.ts';
import type { PictureTrouble } from '../picture/picture.ts';
import type {
  ArrangingTrouble,
  CheckTrouble,
  FigureTrouble,
  FileTrouble,
  PresetTrouble,
  ProfileTrouble,
  ReadyTrouble,
  RecipeTrouble,
  RouteTrouble,
  ScaleTrouble,
  SizeTrouble,
  ThreadTrouble,
  Trouble,
  TrueTrouble,
  UseTrouble,
} from '../trouble.ts';
import { arrangeTroubleInWords } from './arrange.ts';
import { backupTroubleInWords } from './backup.ts';
import { calibrateTroubleInWords, profileTroubleInWords } from './calibrate.ts';
import { containerTroubleInWords } from './container.ts';
import { cutTroubleInWords, presetTroubleInWords } from './cut.ts';
import { figureTroubleInWords, recipeTroubleInWords } from './draft.ts';
import { fileTroubleInWords } from './file.ts';
import { lightTroubleInWords } from './light.ts';
import { patternTroubleInWords } from './pattern.ts';
import { pictureTroubleInWords } from './picture.ts';
import { printTroubleInWords } from './print.ts';
import { readyTroubleInWords } from './ready.ts';
import { routeTroubleInWords } from './route.ts';
import { sizeTroubleInWords } from './size-trouble.ts';
import { threadListTroubleInWords } from './threads.ts';
import { trueTroubleInWords } from './true.ts';
import { scaleTroubleInWords, useTroubleInWords } from './use.ts';
import { yarnTroubleInWords } from './yarn.ts';

/** Whatever stopped a job: what happened, where, and what to do next. */
export function troubleInWords(trouble: Trouble): string {
  if (isOf<PictureTrouble>(trouble, PICTURE)) return pictureTroubleInWords(trouble);
  if (isOf<FileTrouble>(trouble, FILE)) return fileTroubleInWords(trouble);
  if (isOf<UseTrouble>(trouble, USE)) return useTroubleInWords(trouble);
  if (isOf<ScaleTrouble>(trouble, SCALE)) return scaleTroubleInWords(trouble);
  if (isOf<TrueTrouble>(trouble, TRUE)) return trueTroubleInWords(trouble);
  if (isOf<ContainerTrouble>(trouble, CONTAINER)) return containerTroubleInWords(trouble);
  if (isOf<BackupTrouble>(trouble, BACKUP)) return backupTroubleInWords(trouble);
  if (isOf<PrintTrouble>(trouble, PRINT)) return printTroubleInWords(trouble);
  if (isOf<CalibrateTrouble>(trouble, CALIBRATE)) return calibrateTroubleInWords(trouble);
  if (isOf<ProfileTrouble>(trouble, PROFILE)) return profileTroubleInWords(trouble);
  if (isOf<ReadyTrouble>(trouble, READY)) return readyTroubleInWords(trouble);
  if (isOf<RouteTrouble>(trouble, ROUTE)) return routeTroubleInWords(trouble);
  if (isOf<CheckTrouble>(trouble, LIGHT)) return lightTroubleInWords(trouble);
  if (isOf<CutTrouble>(trouble, CUT)) return cutTroubleInWords(trouble);
  if (isOf<PresetTrouble>(trouble, PRESET)) return presetTroubleInWords(trouble);
  if (isOf<RecipeTrouble>(trouble, RECIPE)) return recipeTroubleInWords(trouble);
  if (isOf<FigureTrouble>(trouble, FIGURE)) return figureTroubleInWords(trouble);
  if (isOf<ArrangingTrouble>(trouble, ARRANGE)) return arrangeTroubleInWords(trouble);
  if (isOf<SizeTrouble | RepeatTrouble>(trouble, SIZE)) return sizeTroubleInWords(trouble);
  if (isOf<ThreadTrouble>(trouble, THREAD)) return threadTroubleInWords(trouble);
  return patternTroubleInWords(trouble as PatternTrouble);
}

// Every kind of every family, checked by the compiler to be complete: a kind that is left out does not compile.
type Kinds<Family extends { readonly kind: string }> = Readonly<Record<Family['kind'], true>>;

const PICTURE: Kinds<PictureTrouble> = {
  'empty-file': true,
  'not-a-picture': true,
  'damaged-picture': true,
  'pixels-withheld': true,
  'picture-too-large': true,
};

const FILE: Kinds<FileTrouble> = {
  'no-such-file': true,
  'is-a-folder': true,
  'not-allowed': true,
  'file-too-large': true,
  'cannot-read': true,
  'cannot-write': true,
  'no-such-folder': true,
  'disk-full': true,
  'same-as-input': true,
  'folder-is-a-file': true,
  'folder-not-ours': true,
};

const USE: Kinds<UseTrouble> = {
  'bad-option': true,
  'two-scales': true,
  'needs-option': true,
  'not-to-terminal': true,
};

const SCALE: Kinds<ScaleTrouble> = {
  'unequal-dots': true,
  'span-too-short': true,
  'absurd-scale': true,
};

const TRUE: Kinds<TrueTrouble> = {
  'unknown-pin': true,
  'same-pins': true,
  'unknown-part': true,
  'no-ground': true,
};

const CONTAINER: Kinds<ContainerTrouble> = {
  'damaged-zip': true,
  'too-many-entries': true,
  'entry-too-large': true,
  'bad-entry-name': true,
  'duplicate-entry': true,
  'missing-entry': true,
  'unlisted-entry': true,
  'damaged-entry': true,
  'other-picture': true,
  'in-entry': true,
};

const BACKUP: Kinds<BackupTrouble> = {
  'not-a-backup': true,
  'is-a-backup': true,
  'backup-newer': true,
  'backup-damaged': true,
  'backup-too-large': true,
  'shelf-too-large': true,
};

const READY: Kinds<ReadyTrouble> = { 'too-many-pins': true, 'nothing-to-prick': true, 'no-size': true };

const ROUTE: Kinds<RouteTrouble> = { 'spread-scale-unknown': true };

const CUT: Kinds<CutTrouble> = {
  'cut-scale-unknown': true,
  'cut-no-holes': true,
  'cut-nothing-left': true,
  'cut-hole-over-spacing': true,
  'cut-option': true,
  'cut-too-many-parts': true,
  'cut-bed-too-small': true,
  'cut-paper-too-small': true,
};

const PRESET: Kinds<PresetTrouble> = { 'not-a-preset': true };

const PRINT: Kinds<PrintTrouble> = {
  'print-scale-unknown': true,
  'print-nothing': true,
  'print-paper-too-small': true,
  'print-too-many-sheets': true,
  'print-option': true,
  'print-no-such-sheet': true,
};

const CALIBRATE: Kinds<CalibrateTrouble> = { 'reading-impossible': true, 'reading-out-of-range': true };

const PROFILE: Kinds<ProfileTrouble> = { 'not-a-profile': true };

const LIGHT: Kinds<CheckTrouble> = {
  'light-scale-unknown': true,
  'light-few-pins': true,
  'light-no-holes': true,
  'light-few-holes': true,
  'light-blurred': true,
  'light-no-match': true,
  'light-poor-match': true,
};

const RECIPE: Kinds<RecipeTrouble> = { 'no-recipe': true, 'unknown-recipe': true };

const SIZE: Kinds<SizeTrouble | RepeatTrouble> = {
  'size-scale-unknown': true,
  'size-no-spacing': true,
  'size-no-repeat': true,
  'size-no-thread': true,
  'size-absurd': true,
  'corners-too-long': true,
  'repeats-over-limit': true,
};

const THREAD: Kinds<ThreadTrouble> = { 'bad-thread': true, 'bad-threads': true };

const threadTroubleInWords = (trouble: ThreadTrouble): string =>
  trouble.kind === 'bad-thread'
    ? yarnTroubleInWords(trouble.trouble)
    : threadListTroubleInWords(trouble.trouble);

const FIGURE: Kinds<FigureTrouble> = {
  'recipe-figure': true,
  'missing-figure': true,
  'unknown-figure': true,
  'bad-figure': true,
};

const ARRANGE: Kinds<ArrangingTrouble> = {
  'units-differ': true,
  'no-step': true,
  'no-repeat': true,
  'no-footside': true,
  'footside-turns': true,
  'no-ground-angle': true,
  'nothing-to-arrange': true,
};

const isOf = <Family extends Trouble>(trouble: Trouble, kinds: Kinds<Family>): trouble is Family =>
  Object.hasOwn(kinds, trouble.kind);
