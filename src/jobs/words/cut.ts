import { formatBoth, formatInches, formatMm } from '#base/units/format-length.ts';
import type { CutNumber, CutTrouble } from '#paper/cut/options.ts';
import type { CutFile, CuttingNote } from '../cut/cut.ts';
import type { PresetTrouble } from '../trouble.ts';
import { countInWords, listInWords } from './number.ts';
import { quoted, visible } from './quoted.ts';

/** What a person can say of how a pattern is cut. */
export type CutThing =
  | 'hole'
  | 'kerf'
  | 'card'
  | 'engrave'
  | 'ref'
  | 'bed'
  | 'split'
  | 'coupon'
  | 'paper'
  | 'feed'
  | 'power'
  | 'preset';

/** What a door calls these things: the command by its options, the bench by what stands at its fields. */
export type CutNames = (thing: CutThing) => string;

const asOptions: CutNames = (thing) => `--${thing}`;

/** Why a pattern cannot be cut as asked, and what to do next. */
export function cutTroubleInWords(trouble: CutTrouble, named: CutNames = asOptions): string {
  switch (trouble.kind) {
    case 'cut-scale-unknown':
      return 'Nobody knows how large this pattern is (it is in pixels), so nothing can be cut from it. Give the scan\u2019s dpi or a known distance on it, and trace it again.';
    case 'cut-no-holes':
      return 'The pattern has no pins, so there are no holes to cut.';
    case 'cut-nothing-left':
      return `There is nothing in the layers that were asked for (${listInWords(trouble.layers).toLowerCase()}). The outline comes with ${named('card')}, the engraving with ${named('engrave')}, targets and frame with ${named('ref')}.`;
    case 'cut-hole-over-spacing':
      return `A hole of ${formatMm(trouble.hole)} is larger than the spacing of the pins (${formatMm(trouble.spacing)} for half of them): the holes would run into each other and the card fall apart. Give a smaller hole (${named('hole')}), or look whether the pattern\u2019s size is right.`;
    case 'cut-option':
      return `${optionNames[trouble.option]} of ${trouble.value} cannot be cut. It goes from ${trouble.least} to ${trouble.most}${trouble.option === 'tabs' ? '' : ' mm'}.`;
    case 'cut-too-many-parts':
      return `On a bed of that size the pattern would take ${trouble.parts} parts, and at most ${trouble.most} are made. Look whether its size and the bed\u2019s are right.`;
    case 'cut-bed-too-small':
      return `A bed needs at least ${trouble.least} mm both ways to share targets between parts. Look at ${named('bed')} again.`;
    case 'cut-paper-too-small':
      return `With its targets the pattern takes ${formatMm(trouble.width)} by ${formatMm(trouble.height)}, and that does not fit on one sheet of ${trouble.paper} beside its rulers. Give larger paper (${named('paper')}), or a narrower margin (${named('card')}).`;
  }
}

const optionNames: Readonly<Record<CutNumber, string>> = {
  hole: 'A hole',
  kerf: 'A kerf',
  'card-thickness': 'A card thickness',
  'card-margin': 'A margin round the card',
  tabs: 'A number of tabs',
  'tab-width': 'A tab width',
};

/** Why a preset cannot be used. */
export const presetTroubleInWords = ({ where }: PresetTrouble): string =>
  `This is not a preset for cutting${where ? `: look at ${quoted(where.slice(0, 60))}` : ''}. docs/cut.md says what one holds, and examples/ has one to start from.`;

/** What a person should know of the files, and what to do about it. */
export function cuttingNoteInWords(note: CuttingNote, named: CutNames = asOptions): string {
  switch (note.kind) {
    case 'ask-for-kerf':
      return `Does your shop or your machine\u2019s program compensate for the kerf (what the beam takes away)? The file takes it that it does. If it does not, ask how wide the kerf is, and give it (${named('kerf')}); 0 leaves this question out.`;
    case 'points-for-holes':
      return `The kerf (${formatMm(note.kerf, 3)}) is as wide as the hole or wider (${formatMm(note.hole, 3)}): each hole is a mere point at its centre, and comes out at least as large as the kerf. Use a finer beam, or a larger hole (${named('hole')}).`;
    case 'holes-merged':
      return `${countInWords(note.count, 'pin')} coincide${note.count === 1 ? 's' : ''} with another (less than 0.01 mm apart) and ${note.count === 1 ? 'gets' : 'get'} no hole of ${note.count === 1 ? 'its' : 'their'} own.`;
    case 'holes-overlap':
      return `${countInWords(note.pairs.length, 'pair')} of holes run into each other: ${pairsInWords(note.pairs)}. Take one of each away, or give a smaller hole (${named('hole')}).`;
    case 'thin-web':
      return `Between ${countInWords(note.pairs, 'pair')} of holes less than ${formatMm(note.least)} of card is left (thinnest: ${formatMm(note.thinnest)}, between ${visible(note.pins.join(' and '))}); it may burn through or tear. Give a smaller hole (${named('hole')}), or enlarge the pattern.`;
    case 'webs-not-all':
      return `More than ${note.most} pairs of holes lie too near each other; not all of them were looked for.`;
    case 'small-hole':
      return `A hole of ${formatMm(note.hole)} is under half of the card\u2019s thickness (${formatMm(note.least)}) and hard to cut clean. Try it on a test coupon (${named('coupon')}) first.`;
    case 'over-bed':
      return `The file measures ${formatMm(note.width)} by ${formatMm(note.height)}, which is larger than the bed (${formatMm(note.bed.width)} by ${formatMm(note.bed.height)}). Parts that share targets come with ${named('split')}.`;
    case 'card-inside-holes':
      return `With a margin of ${formatMm(note.margin)} the card\u2019s edge runs along its outer holes and may tear there. Give it a wider margin (${named('card')}).`;
    case 'tabs-left-out':
      return `Only ${note.made} of ${note.wanted} tabs found a place between corners and holes.`;
    case 'engraved-by-middle':
      return 'Engraving follows the middle of each line: the thickness of a gimp, dashes, tints and filled arrow heads are not engraved.';
    case 'lines-merged':
      return `${countInWords(note.count, 'line is', 'lines are')} there twice and engraved once.`;
    case 'pins-in-doubt':
      return `${countInWords(note.pins.length, 'pin')} may be no pin${note.pins.length === 1 ? '' : 's'} but a speck or a letter (found with little confidence), and ${note.pins.length === 1 ? 'gets a hole' : 'get holes'} all the same: ${visible(listInWords(firstOf(note.pins)))}. Look the pattern over, and take out what is none.`;
    case 'scale-unproved':
      return 'Nothing vouches for the size of this pattern. Measure a known distance on the test coupon or the first card.';
    case 'power-guessed':
      return `Feed and power in this G-code fit no machine in particular. Take yours from the machine\u2019s manual and a test coupon, and give them (${named('feed')} and ${named('power')}, or ${named('preset')}).`;
    case 'ref-not-in-gcode':
      return 'Targets are for aligning only, so nothing of them is burnt: their places stand in the G-code\u2019s comments. Move there by hand and look.';
    case 'split-not-needed':
      return `The pattern needs no splitting: it fits on the bed, or no bed was given (${named('bed')}).`;
  }
}

const pairsInWords = (pairs: readonly (readonly [string, string])[]): string =>
  visible(listInWords(firstOf(pairs.map((pair) => pair.join(' with ')))));

/** The first eight, and how many more there are. */
const firstOf = (words: readonly string[]): string[] =>
  words.length > 8 ? [...words.slice(0, 8), `${words.length - 8} more`] : [...words];

/** How to check a file once it is opened: its size, its holes and the first of them. */
export function cutFileInWords({ width, height, holes, first, travel }: CutFile, name: string): string {
  const size = `${visible(name)} should measure ${formatBoth(width)} by ${formatBoth(height)}`;
  if (!first) return `${size}.`;
  const inches = `${formatInches(first.x, 4)}, ${formatInches(first.y, 4)}`;
  const where = `the first at ${formatMm(first.x, 3)}, ${formatMm(first.y, 3)} (${inches})`;
  return `${size}, ${countInWords(holes, 'hole')}, ${where}; the way from hole to hole is ${formatMm(travel, 0)}.`;
}
