import type { PaperNote } from '#paper/note.ts';

/** A note in words: what was noticed, and what to do about it. */
export function paperNoteInWords(note: PaperNote): string {
  switch (note.kind) {
    case 'holes-nearly-touch':
      return `${count(note.pins.length, 'hole lies', 'holes lie')} so near a neighbour (closest: ${note.closest.toFixed(2)} mm) that ${note.pins.length === 1 ? 'its mark is' : 'their marks are'} printed smaller: ${some(note.pins)}. Look whether one of them is there twice.`;
    case 'seam-near-holes':
      return `${count(note.pins.length, 'hole lies', 'holes lie')} within 2 mm of a cut between sheets: ${some(note.pins)}. Prick ${note.pins.length === 1 ? 'it' : 'them'} after the sheets are joined.`;
    case 'letters-missing':
      return `The print has no letters for ${note.letters.slice(0, 12).join(' ')}; an empty square stands in their place.`;
    case 'scale-not-proved':
      return 'Nothing vouches for the size of this pattern. Measure a known distance on the first print before pricking.';
    case 'tint-changed':
      return `The tint ${note.from} of area ${note.area} would be lost under the film; ${note.to} is printed instead.`;
    case 'not-expressed':
      return `${note.writer} cannot show ${note.what}.`;
    case 'mark-without-pin':
      return `The mark or area ${note.mark} names a pin that is not in the pattern, so it is not drawn.`;
    case 'label-left-out':
      return `There was no free place for the words "${note.label}", so they are not printed.`;
  }
}

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

const some = (names: readonly string[]): string =>
  names.length > 8 ? `${names.slice(0, 8).join(', ')} and ${names.length - 8} more` : names.join(', ');
