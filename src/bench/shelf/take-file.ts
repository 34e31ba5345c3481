import type { Progress } from '#base/progress.ts';
import { done, type Result } from '#base/result.ts';
import { mayBePattern } from '#jobs/picture/kind.ts';
import type { Trouble } from '#jobs/trouble.ts';
import type { Database } from '../store/database.ts';
import { createDesign } from '../store/designs.ts';
import { runJob } from '../worker/run.ts';

/** A design that came out of a file, and what to know about how the file was read. */
export interface Taken {
  readonly id: string;
  readonly name: string;
  readonly notes: readonly string[];
}

/** As many bytes as tell what a file is. */
const HEAD = 64;

/** Puts a file on the shelf, whatever it is: a pattern as it is, a picture as the paper of a new one. */
export async function takeFile(
  database: Database,
  file: File,
  work: { readonly progress: Progress; readonly signal: AbortSignal },
): Promise<Result<Taken, Trouble>> {
  const head = new Uint8Array(await file.slice(0, HEAD).arrayBuffer());
  const made = mayBePattern(head)
    ? await runJob('open', [new Uint8Array(await file.arrayBuffer())], work)
    : await runJob('paper', [file], work);
  if (!made.ok) return made;
  const name = made.value.pattern.about.name ?? file.name;
  const notes = 'notes' in made.value ? made.value.notes : [];
  return done({ id: await createDesign(database, made.value, name), name, notes });
}
