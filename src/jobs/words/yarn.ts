import { yarnSystems } from '#base/units/yarn/system.ts';
import type { YarnTrouble } from '#base/units/yarn/trouble.ts';
import { numberInWords } from './number.ts';
import { quoted } from './quoted.ts';

/** Why the notation of a thread was not understood, what was understood, and what would work. */
export function yarnTroubleInWords(trouble: YarnTrouble): string {
  switch (trouble.kind) {
    case 'empty':
      return `No thread was given. Write ${EXAMPLES}.`;
    case 'no-number':
      return `${quoted(trouble.text)} holds no number greater than nought, so that nothing tells how thick the thread is. Write ${EXAMPLES}.`;
    case 'no-system':
      return `${quoted(trouble.text)} does not say in which system the number is meant, and the systems differ widely. Write ${either(trouble.works)}, as the label or the shop says: linen is mostly NeL, cotton Ne.`;
    case 'unknown-word':
      return `In ${quoted(trouble.text)} nobody here knows what ${quoted(trouble.word)} means. Known are ${SYSTEMS}. Write ${EXAMPLES}.`;
    case 'two-systems':
      return `${quoted(trouble.text)} speaks of two systems, ${trouble.systems[0]} (${what(trouble.systems[0])}) and ${trouble.systems[1]} (${what(trouble.systems[1])}). Leave one of them out.`;
    case 'two-marks':
      return `The number ${quoted(trouble.number)} has more than one point or comma. Either is taken as the decimal mark: type it once, and nothing between thousands.`;
    case 'stroke':
      return `In ${quoted(trouble.text)} the number behind the stroke may count strands or the filaments in one strand. Write ${either(trouble.works)}: x for strands, f for filaments, R in front where the number is that of the whole thread.`;
    case 'which-ticket':
      return `Ticket numbers are of two kinds. Write ${either(trouble.works)}; man-made and most modern sewing threads bear the metric one.`;
    case 'ticket-strands':
      return `A ticket number is that of the whole thread, whatever it is made of. Write ${either(trouble.works)} alone.`;
    case 'not-a-fold':
      return `${quoted(trouble.text)} is no way to write a thread of several strands. Write the number, a stroke and the strands: ${EXAMPLES}.`;
    case 'strands-out-of-range':
      return `That would be a thread of ${numberInWords(trouble.strands, 0)} strands, and at most ${trouble.most} are taken. Look at the label again.`;
    case 'tex-out-of-range':
      return `That would be a thread of ${numberInWords(trouble.tex, 3)} tex (grams in 1000 m), and only ${trouble.least} to ${trouble.most} are taken. Look whether the system is the right one.`;
    case 'resultant-disagrees':
      return `The strands come to ${numberInWords(trouble.reckoned, 1)} tex, and the whole thread is said to have ${numberInWords(trouble.told, 1)}: twisting adds a few per cent and takes nothing away. Correct one of the two, or leave it out.`;
  }
}

const EXAMPLES =
  'it like "NeL 80/2", "Ne 60/2", "Nm 60/2", "16 tex x 2", "R69.3 tex", "120 den" or "spun silk 60/2"';

const SYSTEMS = Object.keys(yarnSystems).join(', ');

const what = (system: keyof typeof yarnSystems): string => yarnSystems[system].what;

const either = (works: readonly string[]): string => {
  const all = works.map(quoted);
  return all.length === 1 ? all[0]! : `${all.slice(0, -1).join(', ')} or ${all.at(-1)}`;
};
