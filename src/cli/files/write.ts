import { constants } from 'node:fs';
import { lstat, open, realpath, rename } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { FileTrouble } from '#jobs/trouble.ts';
import { Refused } from '../outcome/refused.ts';
import { codeOf, STANDARD } from './read.ts';
import { untidy } from './untidy.ts';

/**
 * Writes a whole file or nothing: it is written aside in the same folder and moved into place once it is complete.
 * What was there before is replaced; only the input itself is not.
 */
export async function writeWhole(name: string, content: Uint8Array | string, inputs: readonly string[]) {
  if (name === STANDARD) return writeStandard(content);
  try {
    const place = await placeOf(name);
    await refuseInput(place, name, inputs);
    const aside = join(dirname(place), `.${basename(place).slice(0, 80)}.${process.pid}.tmp`);
    await untidy(aside, async () => {
      const file = await open(aside, constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL, 0o666);
      try {
        await file.writeFile(content);
        await file.sync();
      } finally {
        await file.close();
      }
      await rename(aside, place);
    });
  } catch (fault) {
    if (fault instanceof Refused) throw fault;
    throw new Refused(writeTrouble(fault), name);
  }
}

/** Writes to standard output; resolves once it is out, or once nobody reads it any more. */
export function writeStandard(content: Uint8Array | string): Promise<void> {
  return new Promise((resolve, reject) => {
    process.stdout.write(content, (fault) => {
      if (fault && codeOf(fault) !== 'EPIPE') reject(fault);
      else resolve();
    });
  });
}

/** Where a file really goes: through a link to what it points at, so that the link stays one. */
async function placeOf(name: string): Promise<string> {
  try {
    return await realpath(name);
  } catch {
    return join(await realpath(dirname(name)), basename(name));
  }
}

async function refuseInput(place: string, name: string, inputs: readonly string[]): Promise<void> {
  const target = await lstat(place).catch(() => null);
  if (target?.isDirectory()) throw new Refused({ kind: 'is-a-folder' }, name);
  for (const input of inputs) {
    if (input === STANDARD || target === null) continue;
    const same = await realpath(input).then(lstat, () => null);
    if (same?.ino === target.ino && same.dev === target.dev)
      throw new Refused({ kind: 'same-as-input' }, name);
  }
}

export function writeTrouble(fault: unknown): FileTrouble {
  const code = codeOf(fault);
  if (code === 'ENOENT' || code === 'ENOTDIR') return { kind: 'no-such-folder' };
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return { kind: 'not-allowed', to: 'write' };
  if (code === 'ENOSPC' || code === 'EDQUOT') return { kind: 'disk-full' };
  return { kind: 'cannot-write', why: code };
}
