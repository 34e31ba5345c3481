import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll } from 'vitest';
import { buildCommandIfChanged } from '../../scripts/build.mjs';

const program = fileURLToPath(new URL('../../dist/cli/pinlight.mjs', import.meta.url));

/** What one run of the command left behind. */
export interface Run {
  readonly code: number | null;
  /** Standard output, as text and as bytes. */
  readonly out: string;
  readonly bytes: Buffer;
  /** Standard error. */
  readonly err: string;
}

export interface RunOptions {
  readonly stdin?: string | Uint8Array;
  readonly cwd?: string;
  /** Megabytes that JavaScript values may take. */
  readonly heap?: number;
}

/** Runs the built command as people do, in a process of its own. */
export function pinlight(args: readonly string[], options: RunOptions = {}): Promise<Run> {
  const node = options.heap === undefined ? [] : [`--max-old-space-size=${options.heap}`];
  const child = spawn(process.execPath, [...node, program, ...args], {
    cwd: options.cwd,
    env: { ...process.env, NO_COLOR: '1' },
  });
  const out: Buffer[] = [];
  const err: Buffer[] = [];
  child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
  child.stderr.on('data', (chunk: Buffer) => err.push(chunk));
  // A command that refuses its input early closes the pipe before all of it is written.
  child.stdin.on('error', () => {});
  child.stdin.end(options.stdin);
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      const bytes = Buffer.concat(out);
      resolve({ code, bytes, out: bytes.toString(), err: Buffer.concat(err).toString() });
    });
  });
}

/** Builds the command before the tests of a file, and gives them a folder of their own that goes afterwards. */
export function useCommand(): { readonly folder: string; readonly at: (name: string) => string } {
  const folder = mkdtempSync(join(tmpdir(), 'pinlight-test-'));
  beforeAll(buildCommandIfChanged);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return { folder, at: (name) => join(folder, name) };
}
