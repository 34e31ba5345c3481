import type { AreaTrouble } from '#craft/mark/area-at.ts';

/** Why no area is found round a place, and what to do instead. */
export function areaTroubleInWords({ kind }: AreaTrouble): string {
  switch (kind) {
    case 'nothing-drawn':
      return 'No lines are drawn yet that an area could end at. Draw them first, or touch the pins round the area one after the other.';
    case 'not-enclosed':
      return 'The lines do not go all the way round this place: there is a gap, or it lies outside. Close the gap, or touch the pins round the area one after the other.';
  }
}

/** What is worth knowing of an area that was found, or null. */
export function areaInWords({ crossings, islands }: { crossings: number; islands: number }): string | null {
  const said: string[] = [];
  if (crossings > 0) {
    said.push(
      `${crossings === 1 ? 'At one corner' : `At ${crossings} corners`} of this area lines cross without a pin. Such a corner stays where it is when pins are moved; if that matters, undo this and touch the pins round the area instead.`,
    );
  }
  if (islands > 0)
    said.push(
      `${islands === 1 ? 'A part' : `${islands} parts`} inside it ${islands === 1 ? 'is' : 'are'} left out.`,
    );
  return said.length > 0 ? said.join(' ') : null;
}
