import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import type { FileTrouble } from '#jobs/trouble.ts';
import { Refused } from '../outcome/refused.ts';

/** No file larger than this is read, bytes: a hundred million dots in colour, not packed, and some room. */
export const LARGEST_FILE = 400_000_000;

/** Standard input, as a person writes it. */
export const STANDARD = '-';

/** A whole file, or all of standard input for `-`. Ends the verb where it cannot be read or is too large. */
export async function readInput(name: string): Promise<Uint8Array> {
  try {
    if (name === STANDARD) return await collect(process.stdin, name);
    const about = await stat(name);
    if (about.isDirectory()) throw new Refused({ kind: 'is-a-folder' }, name);
    if (about.size > LARGEST_FILE) throw new Refused({ kind: 'file-too-large', limit: LARGEST_FILE }, name);
    // What is no plain file (a pipe, a device) tells no size beforehand, so that everything is read as a stream.
    return await collect(createReadStream(name), name);
  } catch (fault) {
    if (fault instanceof Refused) throw fault;
    throw new Refused(readTrouble(fault), name);
  }
}

async function collect(stream: NodeJS.ReadableStream, name: string): Promise<Uint8Array> {
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of stream) {
    const bytes = typeof chunk === 'string' ? Buffer.from(chunk) : chunk;
    size += bytes.length;
    if (size > LARGEST_FILE) throw new Refused({ kind: 'file-too-large', limit: LARGEST_FILE }, name);
    chunks.push(bytes);
  }
  return new Uint8Array(Buffer.concat(chunks));
}

function readTrouble(fault: unknown): FileTrouble {
  const code = codeOf(fault);
  if (
    code === 'ENOENT' ||
    code === 'ENOTDIR' ||
    code === 'ENAMETOOLONG' ||
    code === 'ERR_INVALID_ARG_VALUE'
  ) {
    return { kind: 'no-such-file' };
  }
  if (code === 'EACCES' || code === 'EPERM') return { kind: 'not-allowed', to: 'read' };
  if (code === 'EISDIR') return { kind: 'is-a-folder' };
  return { kind: 'cannot-read', why: code };
}

/** The system's short name of what went wrong, such as ENOENT. */
export const codeOf = (fault: unknown): string =>
  fault instanceof Error && 'code' in fault ? String(fault.code) : 'unknown';
