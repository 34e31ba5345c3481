import type { TracedHoles } from '#craft/trace/holes.ts';
import type { Scale } from '#pattern/pattern.ts';
import type { PictureIn } from '../picture/picture.ts';
import { COMMAND, type Door } from './door.ts';
import { countInWords, numberInWords } from './number.ts';
import { fileScaleInWords, pictureNoteInWords } from './picture.ts';

/** Candidates under this are more likely no pins. */
export const SURE = 0.5;

/** What a person should know about a tracing: what was found, what is in doubt, and how the size is known. */
export function traceNotesInWords(
  picture: PictureIn,
  scale: Scale,
  found: TracedHoles,
  door: Door,
): string[] {
  return [
    ...picture.notes.map(pictureNoteInWords),
    ...foundInWords(found, door),
    ...scaleInWords(scale, picture, door),
    ...found.notes.map((note) => NOTES[note]),
  ];
}

function foundInWords({ holes }: TracedHoles, door: Door): string[] {
  if (holes.length === 0) return [];
  const doubtful = holes.filter(({ confidence }) => confidence < SURE).length;
  const said = `${countInWords(holes.length - doubtful, 'pin')} found`;
  if (doubtful === 0) return [`${said}.`];
  return [
    `${said}, and ${countInWords(doubtful, 'mark')} that may be a pin and more likely ${doubtful === 1 ? 'is' : 'are'} not (${door.doubtful}).`,
  ];
}

/** How the size is known, and if it is not, what was seen instead and what to do. */
export function scaleInWords(
  scale: Scale,
  picture: Pick<PictureIn, 'scale'>,
  door: Door = COMMAND,
): string[] {
  switch (scale.from) {
    case 'file':
      return [`The size is taken from the file: ${numberInWords(scale.dpi, 2)} dots an inch.`];
    case 'given':
      return [`The size is taken as given: ${numberInWords(scale.dpi, 2)} dots an inch.`];
    case 'span':
      return [`The size comes from the measured distance: ${numberInWords(scale.dpi, 2)} dots an inch.`];
    case 'drafted':
      return [];
    case 'none': {
      const seen = fileScaleInWords(picture.scale);
      const next = `Nobody knows how large the pattern is, so it stays in pixels. ${door.measure}`;
      return seen === null ? [next] : [seen, next];
    }
  }
}

const NOTES: Readonly<Record<TracedHoles['notes'][number], string>> = {
  'no-dots': 'No dots were found that look like pins. Is this the right picture, sharp and not too small?',
  'few-dots': 'Few dots were found, so little is known of how a pin looks on this paper. Check each of them.',
  'light-dots': 'The dots are lighter than what lies round them, as when a card is held against the light.',
  'low-resolution':
    'The dots are only a few pixels wide. Scan the paper at 300 dots an inch or more to have them exact.',
};
