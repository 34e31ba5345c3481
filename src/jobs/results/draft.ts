import { z } from 'zod';
import type { LibraryEntry } from '#craft/draft/library/entry.ts';
import type { LostEdit } from '#craft/draft/redraft/list.ts';
import type { DraftJob } from '../draft/draft.ts';
import { rounded } from './numbers.ts';

const drafted = z.strictObject({
  from: z.enum(['library', 'recipe', 'pattern']).describe('What it was drafted from.'),
  kind: z.string().describe('The kind of recipe.'),
  pins: z.int().nonnegative(),
  width: z.number().describe('From the outermost pin to the outermost pin, mm.'),
  height: z.number(),
  kept: z.int().nonnegative().describe('How many edits made by hand are kept.'),
  lost: z
    .array(
      z.strictObject({
        list: z.enum(['pins', 'runs', 'marks', 'areas']),
        id: z.string(),
        edit: z.enum(['changed', 'added']),
        gone: z.array(z.string()).describe('Pins that it speaks of and that are gone.'),
        sentence: z.string(),
      }),
    )
    .describe('Edits made by hand that could not be kept.'),
});

const listed = z.strictObject({
  library: z.array(z.strictObject({ name: z.string(), kind: z.string(), title: z.string() })),
});

/** What `pinlight draft --json` prints, and with `--list` the library. */
export const draftResult = z.union([drafted, listed]);

export type DraftResult = z.infer<typeof drafted>;

/** The result, with each lost edit in words. */
export function toDraftResult(
  { from, recipe, file, width, height, kept, lost }: DraftJob,
  inWords: (edit: LostEdit) => string,
): DraftResult {
  return {
    from,
    kind: recipe.kind,
    pins: file.pattern.pins.length,
    width: rounded(width),
    height: rounded(height),
    kept,
    lost: lost.map((edit) => ({ ...edit, gone: [...edit.gone], sentence: inWords(edit) })),
  };
}

export const toLibraryResult = (entries: readonly LibraryEntry[]): z.infer<typeof listed> => ({
  library: entries.map(({ name, title, recipe }) => ({ name, kind: recipe.kind, title })),
});
