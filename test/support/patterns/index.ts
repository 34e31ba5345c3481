export { type EdgingOptions, edging } from './edging.ts';
export { type FineOptions, fine } from './fine.ts';
export * from './known.ts';
export { type RoundOptions, round } from './round.ts';
export { type TapeOptions, tape } from './tape.ts';
