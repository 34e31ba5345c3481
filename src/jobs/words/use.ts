import type { ScaleTrouble, UseTrouble } from '../trouble.ts';
import { COMMAND, type Door } from './door.ts';
import { numberInWords } from './number.ts';

/** What is wrong with how a command was put, and how to put it. */
export function useTroubleInWords(trouble: UseTrouble): string {
  switch (trouble.kind) {
    case 'bad-option':
      return `${trouble.option} "${trouble.given}" is not understood. Write ${trouble.wanted}.`;
    case 'two-scales':
      return 'Both --dpi and --span are given, and they may differ. Give the one that was measured.';
    case 'needs-option':
      return `${trouble.option} is missing. Give ${trouble.wanted}.`;
    case 'not-to-terminal':
      return 'The result is no text to read on a screen. Say where it should go, with -o.';
  }
}

/** What is wrong with the scale, and how to set it. */
export function scaleTroubleInWords(trouble: ScaleTrouble, door: Door = COMMAND): string {
  switch (trouble.kind) {
    case 'unequal-dots':
      return `The picture was scanned at ${numberInWords(trouble.across, 1)} dots an inch across and ${numberInWords(trouble.down, 1)} down, so everything in it is pulled long. Scan it again with the same number both ways; if that is wrong and the picture is true, ${door.measureInstead}.`;
    case 'span-too-short':
      return `The two places lie only ${numberInWords(trouble.pixels, 1)} dots apart, too near to measure by. Take two places far apart, such as both ends of the footside.`;
    case 'absurd-scale':
      return `That makes ${numberInWords(trouble.dpi, 1)} dots an inch, which no scanner or camera makes. Look again at what you gave: the number, or the places and their distance.`;
  }
}
