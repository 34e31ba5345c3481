import { Refused } from '../outcome/refused.ts';

/** Ends the verb because an option cannot be understood; `wanted` says what it takes, with an example. */
export function badOption(option: string, given: string, wanted: string): never {
  throw new Refused({ kind: 'bad-option', option, given, wanted }, null);
}
