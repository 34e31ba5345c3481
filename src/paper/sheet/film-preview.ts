import type { Film } from '#base/colour/film.ts';
import { boxHolds } from '#base/geometry/box.ts';
import { boxOfMark, boxOfMarks } from '../drawing/box.ts';
import type { Colour, InkMark } from '../drawing/mark.ts';
import { rectangle } from '../drawing/path.ts';
import { colourUnder } from '../ink/under-film.ts';
import type { PaperNote } from '../note.ts';
import { white } from '../type/style.ts';
import { pictureUnderFilm } from './film-picture.ts';
import type { Sheet } from './sheet.ts';

/**
 * How a complete sheet will look once film lies over its card: every colour inside the film's outline as it is seen
 * through the film. A picture that is still packed as JPEG is shown as it is, with a note.
 */
export function filmPreview(sheet: Sheet, film: Film): { sheet: Sheet; notes: PaperNote[] } {
  const outlines = sheet.marks.filter(({ role }) => role === 'outline');
  const covered = boxOfMarks(outlines);
  const through = (colour: Colour): Colour => colourUnder(colour, film);
  const seen = (mark: InkMark): InkMark => {
    if (mark.kind === 'image') {
      const { picture } = mark;
      return picture.form === 'raster' ? { ...mark, picture: pictureUnderFilm(picture, film) } : mark;
    }
    const { left, right, top, bottom } = boxOfMark(mark);
    const isUnder = boxHolds(covered, { x: (left + right) / 2, y: (top + bottom) / 2 });
    return isUnder ? { ...mark, colour: through(mark.colour) } : mark;
  };
  const filmLine = outlines.find((mark) => mark.kind === 'stroke');
  const ground: InkMark = {
    kind: 'fill',
    role: 'picture',
    path: filmLine?.path ?? rectangle(covered),
    colour: through(white),
    ...(filmLine?.clip && { clip: filmLine.clip }),
  };
  const isPacked = sheet.marks.some((mark) => mark.kind === 'image' && mark.picture.form === 'jpeg');
  return {
    sheet: {
      ...sheet,
      kind: 'film-preview',
      id: sheet.id.replace('complete', 'film-preview'),
      title: `${sheet.title}, seen under ${film.name} film`,
      marks: [ground, ...sheet.marks.map(seen)],
    },
    notes: isPacked
      ? [
          {
            kind: 'not-expressed',
            writer: 'The film preview',
            what: 'the picture of the paper in the colour of the film',
          },
        ]
      : [],
  };
}
