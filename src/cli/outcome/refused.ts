import type { Result } from '#base/result.ts';
import type { Trouble } from '#jobs/trouble.ts';

/** Ends a verb because of what a person gave it; the words come from `#jobs/words`. */
export class Refused extends Error {
  readonly trouble: Trouble;
  /** The file or option it is about, as the person wrote it; null where the words say it all. */
  readonly about: string | null;

  constructor(trouble: Trouble, about: string | null) {
    super(trouble.kind);
    this.name = 'Refused';
    this.trouble = trouble;
    this.about = about;
  }
}

/** The value of a result; its trouble ends the verb, with the name of what it is about. */
export function orRefuse<Value>(result: Result<Value, Trouble>, about: string | null): Value {
  if (result.ok) return result.value;
  throw new Refused(result.trouble, about);
}
