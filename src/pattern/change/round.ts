import { roundNumbers } from '../file/round.ts';
import type { Change } from './change.ts';

/** A change between patterns as files carry them: it does to them what it did before they were rounded. */
export const roundChange = ({ recipe, ...change }: Change): Change => ({
  ...roundNumbers(change),
  ...(recipe && { recipe }),
});
