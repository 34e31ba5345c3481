export type { CardOptions, FaultCounts } from './options.ts';
export { type CardPhoto, photographCard } from './photo.ts';
export type { PrickedCard, PrickedHole } from './prick.ts';
export { type CardScore, scoreOf } from './score.ts';
