import { STANDARD } from '../files/read.ts';
import { Refused } from '../outcome/refused.ts';
import { badOption } from './bad-option.ts';

/** The value of an option that a verb cannot do without; `wanted` says what it takes. */
export function needed<Value>(option: string, value: Value | undefined, wanted: string): Value {
  if (value === undefined) throw new Refused({ kind: 'needs-option', option, wanted }, null);
  return value;
}

/** Where a verb's file goes, if anywhere: without `-o` to standard output, which `--json` claims for itself. */
export function outputOf({
  output,
  json,
}: {
  readonly output?: string;
  readonly json?: true;
}): string | null {
  if (json && output === STANDARD)
    badOption('-o', STANDARD, 'a file: what --json prints goes to standard output');
  return output ?? (json ? null : STANDARD);
}
