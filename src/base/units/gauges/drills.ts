import { inchesToMm } from '../length.ts';
import { gaugeOf } from './gauge.ts';

/** Number drills from No. 50 to No. 80, ten-thousandths of an inch, as in GNU `units`. */
const TENTHS_OF_MILS = [
  700, 670, 635, 595, 550, 520, 465, 430, 420, 410, 400, 390, 380, 370, 360, 350, 330, 320, 310, 292, 280,
  260, 250, 240, 225, 210, 200, 180, 160, 145, 135,
];

/** The number drills with which holes for pins are made. */
export const numberDrills = gaugeOf(
  'number drill',
  'standard',
  TENTHS_OF_MILS.map((size, i) => ({ label: `#${i + 50}`, mm: inchesToMm(size / 10_000) })),
);
