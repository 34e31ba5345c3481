import { draft } from '#craft/draft/draft.ts';
import type { LibraryEntry } from '#craft/draft/library/entry.ts';
import { library } from '#craft/draft/library/index.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** Every recipe of the library with its pattern. Throws where one cannot be drafted. */
export const drafted = (): { readonly entry: LibraryEntry; readonly pattern: Pattern }[] =>
  library.map((entry) => {
    const made = draft(entry.recipe, entry.about);
    if (!made.ok) throw new Error(`${entry.name}: ${JSON.stringify(made.trouble)}`);
    return { entry, pattern: made.value };
  });
