import { gaugeOf } from './gauge.ts';

/**
 * Hand needles by the chart of Wikipedia's article "Sewing needle". No standard was found, and makers' own figures
 * lie some 0.05 mm apart: to be shown beside a measured diameter, never in its place.
 */
export const handNeedles = gaugeOf('hand needle', 'makers', [
  { label: 'sharps 8', mm: 0.61 },
  { label: 'sharps 10', mm: 0.46 },
  { label: 'appliqué 9', mm: 0.53 },
  { label: 'appliqué 10', mm: 0.46 },
  { label: 'beading 10', mm: 0.41 },
  { label: 'chenille 18', mm: 1.24 },
  { label: 'chenille 20', mm: 1.07 },
  { label: 'chenille 22', mm: 0.91 },
  { label: 'chenille 24', mm: 0.76 },
]);

/** How far makers' figures for one needle number lie apart, mm. */
export const NEEDLES_DIFFER = 0.05;

/** Machine needles (DIN 5325, 1953): the number is a hundred times the blade's diameter in mm, so NM 75 is 0.75 mm. */
export const machineNeedles = gaugeOf(
  'machine needle',
  'standard',
  [60, 65, 70, 75, 80, 90, 100, 110, 120].map((number) => ({ label: `NM ${number}`, mm: number / 100 })),
);

/** Outer diameters of hypodermic tubing by its gauge, as makers print them: a pricker that can be bought anywhere. */
export const tubing = gaugeOf('tubing', 'makers', [
  { label: '18 G', mm: 1.27 },
  { label: '20 G', mm: 0.9081 },
  { label: '22 G', mm: 0.7176 },
  { label: '23 G', mm: 0.6414 },
  { label: '24 G', mm: 0.5652 },
  { label: '25 G', mm: 0.5144 },
  { label: '26 G', mm: 0.4636 },
  { label: '27 G', mm: 0.4128 },
  { label: '28 G', mm: 0.362 },
  { label: '30 G', mm: 0.3112 },
]);
