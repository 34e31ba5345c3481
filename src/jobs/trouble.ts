import type { YarnTrouble } from '#base/units/yarn/trouble.ts';
import type { ArrangeTrouble } from '#craft/draft/arrange/index.ts';
import type { DraftTrouble } from '#craft/draft/trouble.ts';
import type { LightTrouble } from '#craft/light/judgement.ts';
import type { RepeatTrouble } from '#craft/size/repeats.ts';
import type { CalibrateTrouble } from '#paper/calibrate/factors.ts';
import type { CutTrouble } from '#paper/cut/options.ts';
import type { PrintTrouble } from '#paper/sheet/options.ts';
import type { ContainerTrouble } from '#pattern/container/trouble.ts';
import type { Takes } from '#pattern/recipe/walk.ts';
import type { ThreadListTrouble } from '#pattern/threads/thread-list.ts';
import type { PatternTrouble } from '#pattern/trouble.ts';
import type { BackupTrouble } from './backup/trouble.ts';
import type { PictureTrouble } from './picture/picture.ts';

/** Everything that can stop a job because of what a person gave it. `words/` puts each into sentences. */
export type Trouble =
  | PatternTrouble
  | ContainerTrouble
  | BackupTrouble
  | PictureTrouble
  | FileTrouble
  | UseTrouble
  | ScaleTrouble
  | TrueTrouble
  | ReadyTrouble
  | RouteTrouble
  | PrintTrouble
  | CalibrateTrouble
  | ProfileTrouble
  | CheckTrouble
  | CutTrouble
  | PresetTrouble
  | RecipeTrouble
  | FigureTrouble
  | ArrangingTrouble
  | SizeTrouble
  | RepeatTrouble
  | ThreadTrouble;

/** What is wrong with a file or folder as such. */
export type FileTrouble =
  | { readonly kind: 'no-such-file' }
  | { readonly kind: 'is-a-folder' }
  | { readonly kind: 'not-allowed'; readonly to: 'read' | 'write' }
  | { readonly kind: 'file-too-large'; readonly limit: number }
  | { readonly kind: 'cannot-read'; readonly why: string }
  | { readonly kind: 'cannot-write'; readonly why: string }
  | { readonly kind: 'no-such-folder' }
  | { readonly kind: 'disk-full' }
  | { readonly kind: 'same-as-input' }
  | { readonly kind: 'folder-is-a-file' }
  | { readonly kind: 'folder-not-ours'; readonly holds: string };

/** What is wrong with how a command was put. */
export type UseTrouble =
  | { readonly kind: 'bad-option'; readonly option: string; readonly given: string; readonly wanted: string }
  | { readonly kind: 'two-scales' }
  | { readonly kind: 'needs-option'; readonly option: string; readonly wanted: string }
  | { readonly kind: 'not-to-terminal' };

/** What is wrong with the scale of a picture or pattern. */
export type ScaleTrouble =
  | { readonly kind: 'unequal-dots'; readonly across: number; readonly down: number }
  | { readonly kind: 'span-too-short'; readonly pixels: number }
  | { readonly kind: 'absurd-scale'; readonly dpi: number };

/** What is wrong with how straightening was asked for. */
export type TrueTrouble =
  | { readonly kind: 'unknown-pin'; readonly pin: string }
  | { readonly kind: 'same-pins'; readonly from: string; readonly to: string }
  | { readonly kind: 'unknown-part'; readonly part: string; readonly parts: readonly string[] }
  | { readonly kind: 'no-ground' };

/** Why a pattern cannot be worked on, though it can be read. */
export type ReadyTrouble =
  | { readonly kind: 'too-many-pins'; readonly count: number; readonly limit: number }
  | { readonly kind: 'nothing-to-prick' }
  /** With what tracing said of the scale, in words. */
  | { readonly kind: 'no-size'; readonly said: readonly string[] };

/** Why a file is no printer profile. */
export type ProfileTrouble = { readonly kind: 'not-a-profile' };

/** Why a card could not be checked. */
export type CheckTrouble = LightTrouble | { readonly kind: 'light-scale-unknown' };

/** Why no order of the holes can be given. */
export type RouteTrouble = { readonly kind: 'spread-scale-unknown' };

/** A shop's preset that is none; `where` is the first value that is wrong, such as 'bed.width'. */
export interface PresetTrouble {
  readonly kind: 'not-a-preset';
  readonly where: string;
}

/** Why there is nothing to draft from. */
export type RecipeTrouble =
  | { readonly kind: 'no-recipe' }
  | { readonly kind: 'unknown-recipe'; readonly name: string; readonly names: readonly string[] };

/** What is wrong with a figure of a recipe; `means` says in words what the figure is. */
export type FigureTrouble =
  | (DraftTrouble & { readonly means: string | null })
  | { readonly kind: 'missing-figure'; readonly figure: string; readonly means: string | null }
  | { readonly kind: 'unknown-figure'; readonly figure: string; readonly figures: readonly string[] }
  | {
      readonly kind: 'bad-figure';
      readonly figure: string;
      readonly given: string;
      readonly takes: Takes;
      readonly means: string | null;
    };

/** Why patterns cannot be arranged as asked. How many pins are too many is said as everywhere. */
export type ArrangingTrouble =
  | Exclude<ArrangeTrouble, { readonly kind: 'too-many-pins' }>
  | { readonly kind: 'no-repeat' }
  | { readonly kind: 'no-ground-angle' }
  | { readonly kind: 'nothing-to-arrange' };

/** Why a size cannot be found. */
export type SizeTrouble =
  | { readonly kind: 'size-scale-unknown' }
  | { readonly kind: 'size-no-spacing' }
  | { readonly kind: 'size-no-repeat' }
  | { readonly kind: 'size-no-thread' }
  | { readonly kind: 'size-absurd'; readonly factor: number; readonly least: number; readonly most: number };

/** A thread, or a list of them, that is not understood. */
export type ThreadTrouble =
  | { readonly kind: 'bad-thread'; readonly trouble: YarnTrouble }
  | { readonly kind: 'bad-threads'; readonly trouble: ThreadListTrouble };
