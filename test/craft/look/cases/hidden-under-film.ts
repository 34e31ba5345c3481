import { greyFilm } from '#base/colour/film.ts';
import type { LookOptions } from '#craft/look/options.ts';
import { inspection, type RuleCase } from '../inspections.ts';

const tinted = (tint: string, options: Partial<LookOptions> = {}) =>
  inspection(
    { areas: [{ id: 'a', outline: [{ pin: 'p1' }, { pin: 'p3' }, { pin: 'p9' }], stitch: 'cloth', tint }] },
    {},
    options,
  );
const lines = (lineInk: string, films = [greyFilm]) =>
  inspection(
    { marks: [{ id: 'm', kind: 'line', from: { pin: 'p1' }, to: { pin: 'p7' } }] },
    {},
    { lineInk, films },
  );

export const cases: RuleCase[] = [
  {
    name: 'a pale blue tint, which blue film swallows',
    fires: tinted('#cfe2f3'),
    nearMiss: tinted('#cfe2f3', { films: [] }),
    mended: tinted('#accbe9'),
  },
  {
    name: 'a tint that grey film shows and blue film does not',
    fires: tinted('#cfe2f3', { leastTintDifference: 8 }),
    nearMiss: tinted('#cfe2f3', { films: [greyFilm], leastTintDifference: 8 }),
    mended: tinted('#f0e442'),
  },
  {
    name: 'a tint so deep that lines drown on it',
    fires: tinted('#0072b2'),
    nearMiss: tinted('#a5b8d3'),
    mended: tinted('#a5b8d3'),
  },
  {
    name: 'pencil-grey lines',
    fires: lines('#7a7a7a'),
    nearMiss: lines('#7a7a7a', []),
    mended: lines('#222222'),
  },
];
