import { gaugeOf } from './gauge.ts';

/** Insect pins, from memory: thin, long and smooth, and sold by number. */
export const insectPins = gaugeOf('insect pin', 'memory', [
  { label: '000', mm: 0.25 },
  { label: '00', mm: 0.3 },
  { label: '0', mm: 0.35 },
  { label: '1', mm: 0.4 },
  { label: '2', mm: 0.45 },
  { label: '3', mm: 0.5 },
  { label: '4', mm: 0.55 },
  { label: '5', mm: 0.6 },
  { label: '6', mm: 0.65 },
  { label: '7', mm: 0.7 },
]);
