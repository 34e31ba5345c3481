import { lstat, mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { READY_MARK, type ReadyFile } from '#jobs/ready/files.ts';
import { Refused } from '../outcome/refused.ts';
import { untidy } from './untidy.ts';
import { writeTrouble } from './write.ts';

/**
 * Writes a folder whole or not at all. A folder of the same name is replaced only where `ready` made it and nobody put
 * anything else in it; an empty one is taken over.
 */
export async function writeFolder(name: string, files: readonly ReadyFile[]): Promise<void> {
  const place = resolve(name);
  try {
    await refuseForeign(place, name);
    const aside = join(dirname(place), `.${basename(place).slice(0, 80)}.${process.pid}.tmp`);
    const old = `${aside}-old`;
    await untidy(aside, async () => {
      await mkdir(aside);
      for (const { name: file, content } of files)
        await writeFile(join(aside, file), content, { flag: 'wx' });
      const replaces = await lstat(place).then(
        () => true,
        () => false,
      );
      if (replaces) await rename(place, old);
      try {
        await rename(aside, place);
      } catch (fault) {
        if (replaces) await rename(old, place);
        throw fault;
      }
      if (replaces) await rm(old, { recursive: true });
    });
  } catch (fault) {
    if (fault instanceof Refused) throw fault;
    throw new Refused(writeTrouble(fault), name);
  }
}

/** Ends the verb where making the folder would lose something; asked before the work is begun, too. */
export async function refuseForeign(place: string, name: string): Promise<void> {
  const found = await lstat(place).catch(() => null);
  if (found === null) return;
  if (!found.isDirectory()) throw new Refused({ kind: 'folder-is-a-file' }, name);
  const entries = await readdir(place);
  const ours = await ownFiles(place);
  const foreign = entries.find((entry) => !ours.has(entry));
  if (foreign !== undefined) throw new Refused({ kind: 'folder-not-ours', holds: foreign }, name);
}

/** The names of the files that `ready` put into a folder, by its own list; none where the list cannot be read. */
async function ownFiles(place: string): Promise<ReadonlySet<string>> {
  try {
    const mark = JSON.parse(await readFile(join(place, READY_MARK), 'utf8'));
    if (mark.format !== 'pinlight-ready' || !Array.isArray(mark.files)) return new Set();
    return new Set(mark.files.filter((file: unknown) => typeof file === 'string'));
  } catch {
    return new Set();
  }
}
