/**
 * What a step that depends on people's input gives back: its value, or the trouble that stopped it.
 * Trouble is a tagged record; `#jobs/words` is the one place that puts it into sentences.
 */
export type Result<Value, Trouble> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly trouble: Trouble };

export const done = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({
  ok: true,
  value,
});

export const failed = <Trouble>(trouble: Trouble): { readonly ok: false; readonly trouble: Trouble } => ({
  ok: false,
  trouble,
});
