import { silent } from '#base/progress.ts';
import type { WholeDesign } from '#jobs/backup/backup.ts';
import { packBackup } from '#jobs/backup/pack.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** A backup of patterns with one earlier version each, under the ids `design-0`, `design-1` and so on, newest first. */
export async function backupOf(
  patterns: readonly { readonly name: string; readonly pattern: Pattern }[],
  settings = {},
): Promise<Buffer> {
  const designs = patterns.map(
    ({ name, pattern }, index): WholeDesign => ({
      ...{ id: `design-${index}`, name, pattern, created: 1, changed: 1_700_000_000_000 - index },
      ...{ pictures: new Map(), versions: [{ saved: 1, pattern }], past: [], future: [] },
    }),
  );
  const pieces: Uint8Array[] = [];
  await packBackup(
    {
      begin: async () => ({ made: Date.UTC(2024, 1, 1), count: designs.length }),
      design: async (index) => designs[index]!,
      settings: async () => settings,
    },
    (piece) => pieces.push(piece.slice()),
    silent,
  );
  return Buffer.concat(pieces);
}
