import { Refused } from '../outcome/refused.ts';

/** The value of an option that a verb cannot do without; `wanted` says what it takes. */
export function needed<Value>(option: string, value: Value | undefined, wanted: string): Value {
  if (value === undefined) throw new Refused({ kind: 'needs-option', option, wanted }, null);
  return value;
}
