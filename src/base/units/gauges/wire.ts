import { inchesToMm } from '../length.ts';
import { gaugeOf } from './gauge.ts';

/** American wire gauge, mm: ASTM B258, d = 0.005 in * 92^((36 - n) / 39). Sizes 00, 000, 0000 are -1, -2, -3. */
export const awgDiameter = (number: number): number => inchesToMm(0.005 * 92 ** ((36 - number) / 39));

/** The sizes that pins, needles and prickers come near. */
export const americanWire = gaugeOf(
  'AWG',
  'standard',
  Array.from({ length: 27 }, (_, i) => ({ label: `${i + 14}`, mm: awgDiameter(i + 14) })),
);

/** British standard wire gauge, thousandths of an inch, from No. 14 to No. 40: a table, with no formula behind it. */
const SWG_MILS = [
  80, 72, 64, 56, 48, 40, 36, 32, 28, 24, 22, 20, 18, 16.4, 14.8, 13.6, 12.4, 11.6, 10.8, 10, 9.2, 8.4, 7.6,
  6.8, 6, 5.2, 4.8,
];

/** British standard wire gauge (Order in Council of 1883), as in GNU `units`. */
export const britishWire = gaugeOf(
  'SWG',
  'standard',
  SWG_MILS.map((mils, i) => ({ label: `${i + 14}`, mm: inchesToMm(mils / 1000) })),
);
