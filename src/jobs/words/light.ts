import type { Judgement, LeaningZone, LightNote, PinVerdict, Tried } from '#craft/light/judgement.ts';
import type { CheckTrouble } from '../trouble.ts';
import { COMMAND, type Door } from './door.ts';
import { countInWords, listInWords, numberInWords } from './number.ts';

/** What the photo tells of the card, as a page to read: the summary first, then each hole to see to. */
export function judgementInWords(judgement: Judgement): string {
  const list = faultsInWords(judgement)
    .map((line) => line && `  - ${line}\n`)
    .join('');
  const zones = judgement.zones.map((zone) => `${leanInWords(zone)}\n`).join('');
  return [summaryInWords(judgement), '\n', list && `\n${list}`, zones && `\n${zones}`].join('');
}

/** A line for each of `faultsOf`, in the same order; null where a pin was not seen, which the notes tell together. */
export const faultsInWords = ({ pins, extra }: Judgement): (string | null)[] => [
  ...pins.filter(({ verdict }) => verdict !== 'good').map(lineOf),
  ...extra.map(
    ({ x, y }) =>
      `a hole that the pattern does not have, at ${numberInWords(x, 1)} / ${numberInWords(y, 1)} mm`,
  ),
];

/** 'Held to the light: 272 pins, 4 holes missing, ...' */
export function summaryInWords({
  pins,
  missing,
  extra,
  offCentre,
  oval,
  large,
  unseen,
  fit,
}: Judgement): string {
  const counts = [
    [missing.length, 'hole missing', 'holes missing'],
    [offCentre.length, 'hole off its place', 'holes off their places'],
    [oval.length, 'oval hole', 'oval holes'],
    [large.length, 'hole too wide', 'holes too wide'],
    [extra.length, 'hole too many', 'holes too many'],
  ] as const;
  const said = counts.flatMap(([count, one, more]) => (count === 0 ? [] : [countInWords(count, one, more)]));
  const side = fit.mirrored ? 'seen from the back' : 'seen from the front';
  const seen = `${countInWords(pins.length - unseen.length, 'pin')} compared, ${side}`;
  if (said.length > 0) return `Held to the light: ${seen}: ${listInWords(said)}.`;
  return unseen.length === 0
    ? `Held to the light: ${seen}: every hole is there and in its place.`
    : `Held to the light: ${seen}: every hole that the photo shows is there and in its place.`;
}

function lineOf({ index, verdict, dx, dy, aspect, angle, lean, diameter }: PinVerdict): string | null {
  // people count pins from 1
  const pin = `pin ${index + 1}`;
  switch (verdict) {
    case 'missing':
      return `${pin}: no hole`;
    case 'off-centre':
      return `${pin}: ${numberInWords(Math.hypot(dx!, dy!), 2)} mm off its place, ${directionInWords(dx!, dy!)}`;
    case 'oval': {
      const leans = lean === null ? '' : `; the needle leant by about ${numberInWords(lean, 0)} degrees`;
      return `${pin}: oval, ${numberInWords(aspect!, 2)} times as long as wide, ${axisInWords(angle!)}${leans}`;
    }
    case 'large':
      return `${pin}: too wide, ${numberInWords(diameter!, 2)} mm`;
    case 'good':
    case 'unseen':
      return null;
  }
}

/** Which way a step goes on the front of the card, its top up. */
export function directionInWords(dx: number, dy: number): string {
  const across = dx > 0 ? 'to the right' : 'to the left';
  const down = dy > 0 ? 'down' : 'up';
  if (Math.abs(dx) > 2.4 * Math.abs(dy)) return across;
  if (Math.abs(dy) > 2.4 * Math.abs(dx)) return down;
  return `${down} and ${across}`;
}

function axisInWords(angle: number): string {
  if (Math.abs(angle) < 22.5) return 'across';
  if (Math.abs(angle) > 67.5) return 'up and down';
  return angle > 0 ? 'from top left to bottom right' : 'from bottom left to top right';
}

/** 'Along the lower edge you lean about 8 degrees to the right (41 holes).' */
export function leanInWords(
  { across, down, holes, aspect, angle, towards, lean }: LeaningZone,
  door: Door = COMMAND,
): string {
  const way = towards === null ? axisInWords(angle) : directionInWords(towards.x, towards.y);
  const much =
    lean === null
      ? `the needle leans ${way}: holes are ${numberInWords(aspect, 2)} times as long as wide (${door.cardThickness} to have the angle)`
      : `you lean about ${numberInWords(lean, 0)} degrees ${towards === null ? `one way or the other ${way}` : way}`;
  return `${placeInWords(across, down)} ${much} (${countInWords(holes, 'hole')}).`;
}

function placeInWords(across: LeaningZone['across'], down: LeaningZone['down']): string {
  if (across === 'middle' && down === 'middle') return 'In the middle';
  if (across === 'middle') return down === 'top' ? 'Along the upper edge' : 'Along the lower edge';
  if (down === 'middle') return `Along the ${across} edge`;
  return `In the ${down} ${across} corner`;
}

/** What a person should know beside the verdicts. */
export function lightNoteInWords(note: LightNote): string {
  switch (note.kind) {
    case 'ambiguous': {
      const many = note.ways === 1 ? 'in one more way' : `in ${note.ways} more ways`;
      const other = note.mirrored
        ? 'turned over'
        : `turned by ${numberInWords(Math.abs(note.turn), 0)} degrees`;
      return `The pattern is so regular that it lies on these holes ${many} just as well, for one ${other}. The faults are the same each way, but the pins that they are given to may be others. Mark one corner of the card to be sure.`;
    }
    case 'dark-holes':
      return 'The holes are darker than the card, as on a card that lies on a dark ground or is lit from the front. Drawn dots look the same, so that a hole that was marked and not pricked is not noticed: hold the card against the light to be sure.';
    case 'blurred':
      return 'The photo is too blurred to tell oval holes from round ones; nothing is said of their shape. Rest the camera on something, and let it focus on the card.';
    case 'unseen':
      return `${countInWords(note.pins, 'pin')} cannot be seen in this photo (outside it, or too much light about); nothing is said of ${note.pins === 1 ? 'it' : 'them'}. Take another photo of that part.`;
    case 'other-holes':
      return `There are ${note.count} more holes or spots of light well outside the pattern: another card, or something behind it? They were left alone.`;
    case 'coarse-picture':
      return `Holes are only ${numberInWords(note.pixels, 1)} pixels wide, so that small faults are not seen. Take the photo from nearer by, or with more pixels.`;
  }
}

/** Why a card could not be checked, and what to do. */
export function lightTroubleInWords(trouble: CheckTrouble, door: Door = COMMAND): string {
  switch (trouble.kind) {
    case 'light-scale-unknown':
      return `Nobody knows how large this pattern is, so that nothing can be said in millimetres. ${door.makeItsSizeKnown}`;
    case 'light-few-pins':
      return `The pattern has ${countInWords(trouble.pins, 'pin')}; with fewer than 8 a match could be chance.`;
    case 'light-no-holes':
      return `No holes were seen in this photo. Hold the card against a window or a lamp, sharp and filling the picture. ${triedInWords(trouble.tried)}`;
    case 'light-few-holes':
      return `Only ${countInWords(trouble.holes, 'hole')} could be seen, of ${trouble.pins} in the pattern: too few to match. Is the whole card in the picture, evenly lit from behind and sharp? ${triedInWords(trouble.tried)}`;
    case 'light-blurred':
      return `The photo is too blurred to judge holes by. Rest the camera on something, and let it focus on the card. ${triedInWords(trouble.tried)}`;
    case 'light-no-match':
      return `The holes in the photo cannot be brought on to this pattern: ${trouble.holes} seen, ${trouble.pins} in the pattern, and no way of laying one on the other explains more than ${trouble.explained}. Is it the pattern of this card? ${triedInWords(trouble.tried)}`;
    case 'light-poor-match':
      return `The pattern lies on the holes only in part: ${trouble.missing} of its ${trouble.pins} holes would be missing and ${trouble.extra} would be too many. Most likely it is the pattern of another card. ${triedInWords(trouble.tried)}`;
  }
}

const triedInWords = ({ light, dark, guesses }: Tried): string =>
  `(Tried: ${countInWords(light, 'light spot')} and ${countInWords(dark, 'dark spot')} as holes, either side of the card, any turn and tilt; ${countInWords(guesses, 'guess', 'guesses')} followed up.)`;
