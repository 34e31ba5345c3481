import { z } from 'zod';
import { done, failed, type Result } from '#base/result.ts';
import { fibres } from '#base/units/yarn/fibre.ts';
import { parseYarn } from '#base/units/yarn/parse.ts';
import type { YarnTrouble } from '#base/units/yarn/trouble.ts';
import { parsePart } from '../file/shape.ts';
import { newerVersion } from '../file/upgrades.ts';
import { parseJson } from '../json/parse.ts';
import type { PatternTrouble } from '../trouble.ts';

/** Says of a JSON file that it holds a maker's own threads. */
export const THREADS_FORMAT = 'pinlight-threads';
export const THREADS_VERSION = 1;

const threadEntry = z.strictObject({
  name: z.string().min(1).max(80).describe('What you call it: your own word, or what stands on the spool.'),
  fibre: z.enum(fibres).describe('What it is spun of.'),
  count: z
    .string()
    .max(80)
    .exactOptional()
    .describe('Its number as the label writes it: "NeL 80/2", "16 tex x 2", "120 den", "spun silk 60/2".'),
  wrapsPerCm: z
    .number()
    .min(1)
    .max(200)
    .exactOptional()
    .describe('How many windings you counted side by side in a centimetre; this goes before any number.'),
});

/** A thread of a maker's list. What is measured on it goes before what its label leads one to expect. */
export type ThreadEntry = z.output<typeof threadEntry>;

/** A maker's own threads, as she keeps them in a file. */
export const threadListSchema = z
  .strictObject({
    format: z.literal(THREADS_FORMAT),
    version: z.literal(THREADS_VERSION),
    threads: z.array(threadEntry).max(2_000),
  })
  .meta({ title: 'Pinlight thread list' });

export type ThreadListTrouble =
  | { readonly kind: 'not-threads'; readonly format: string | null }
  | { readonly kind: 'bad-file'; readonly trouble: PatternTrouble }
  /** Places in the list count from 0. */
  | {
      readonly kind: 'bad-count';
      readonly place: number;
      readonly name: string;
      readonly trouble: YarnTrouble;
    }
  /** Neither a number nor measured wraps: nothing tells how thick it is. */
  | { readonly kind: 'no-thickness'; readonly place: number; readonly name: string }
  | { readonly kind: 'same-name'; readonly place: number; readonly name: string };

/** The threads in the text of a list, each of a known thickness and a name of its own; or the first trouble. */
export function readThreadList(text: string): Result<readonly ThreadEntry[], ThreadListTrouble> {
  const parsed = parseJson(text, LIMITS);
  if (!parsed.ok) return failed({ kind: 'bad-file', trouble: parsed.trouble });
  const format = formatOf(parsed.value);
  if (format !== THREADS_FORMAT) return failed({ kind: 'not-threads', format });
  const newer = newerVersion(parsed.value, THREADS_VERSION);
  if (newer !== null) {
    return failed({
      kind: 'bad-file',
      trouble: { kind: 'newer-version', version: newer, newest: THREADS_VERSION },
    });
  }
  const list = parsePart(threadListSchema, parsed.value, []);
  if (!list.ok) return failed({ kind: 'bad-file', trouble: list.trouble });
  const names = new Set<string>();
  for (const [place, { name, count, wrapsPerCm }] of list.value.threads.entries()) {
    if (names.has(name)) return failed({ kind: 'same-name', place, name });
    names.add(name);
    if (count === undefined && wrapsPerCm === undefined) return failed({ kind: 'no-thickness', place, name });
    const yarn = count === undefined ? null : parseYarn(count);
    if (yarn && !yarn.ok) return failed({ kind: 'bad-count', place, name, trouble: yarn.trouble });
  }
  return done(list.value.threads);
}

/** The text of a list of threads, one a line. */
export const writeThreadList = (threads: readonly ThreadEntry[]): string =>
  `{"format":"${THREADS_FORMAT}","version":${THREADS_VERSION},"threads":[\n${threads
    .map((thread) => JSON.stringify(thread))
    .join(',\n')}\n]}\n`;

const LIMITS = { length: 1_000_000, values: 20_000, depth: 8 };

function formatOf(value: unknown): string | null {
  if (typeof value !== 'object' || value === null || !('format' in value)) return null;
  return typeof value.format === 'string' ? value.format.slice(0, 80) : null;
}
