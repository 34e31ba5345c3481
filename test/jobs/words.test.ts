import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Trouble } from '#jobs/trouble.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';

const troubles: Trouble[] = [
  { kind: 'empty-file' },
  { kind: 'not-a-picture', is: null },
  { kind: 'not-a-picture', is: 'PDF' },
  { kind: 'not-a-picture', is: 'HEIC' },
  { kind: 'not-a-picture', is: 'SVG' },
  { kind: 'not-a-picture', is: 'JSON' },
  { kind: 'damaged-picture', format: 'JPEG' },
  { kind: 'pixels-withheld' },
  { kind: 'picture-too-large', width: 30_000, height: 20_000, limit: 100_000_000 },
  { kind: 'no-such-file' },
  { kind: 'is-a-folder' },
  { kind: 'not-allowed', to: 'read' },
  { kind: 'not-allowed', to: 'write' },
  { kind: 'file-too-large', limit: 400_000_000 },
  { kind: 'cannot-read', why: 'EIO' },
  { kind: 'cannot-write', why: 'EIO' },
  { kind: 'no-such-folder' },
  { kind: 'disk-full' },
  { kind: 'same-as-input' },
  { kind: 'folder-is-a-file' },
  { kind: 'folder-not-ours', holds: 'notes.txt' },
  { kind: 'bad-option', option: '--dpi', given: 'x', wanted: 'a number' },
  { kind: 'two-scales' },
  { kind: 'needs-option', option: '-o', wanted: 'a file' },
  { kind: 'not-to-terminal' },
  { kind: 'unequal-dots', across: 204, down: 98 },
  { kind: 'span-too-short', pixels: 12 },
  { kind: 'absurd-scale', dpi: 2 },
  { kind: 'unknown-pin', pin: 'p9' },
  { kind: 'same-pins', from: 'p1', to: 'p1' },
  { kind: 'unknown-part', part: 'x', parts: [] },
  { kind: 'unknown-part', part: 'x', parts: Array.from({ length: 40 }, (_, i) => `run-${i + 1}`) },
  { kind: 'no-ground' },
  { kind: 'not-a-backup' },
  { kind: 'is-a-backup' },
  { kind: 'backup-newer', version: 9, newest: 1 },
  { kind: 'backup-damaged' },
  { kind: 'backup-too-large' },
  { kind: 'shelf-too-large' },
  { kind: 'too-many-pins', count: 1_000_000, limit: 200_000 },
  { kind: 'nothing-to-prick' },
  { kind: 'no-size', said: [] },
  { kind: 'not-a-profile' },
  { kind: 'print-scale-unknown' },
  { kind: 'damaged-zip' },
  { kind: 'size-scale-unknown' },
  { kind: 'size-no-spacing' },
  { kind: 'size-no-repeat' },
  { kind: 'size-no-thread' },
  { kind: 'size-absurd', factor: 400, least: 0.05, most: 20 },
  { kind: 'corners-too-long', corners: 40, length: 30 },
  {
    kind: 'repeats-over-limit',
    limit: 0.05,
    nearest: { way: 'scale', counts: [2], scale: 0.75, ease: [0], cost: 0.25, fits: false },
  },
  {
    kind: 'repeats-over-limit',
    limit: 0.05,
    nearest: { way: 'ease', counts: [2, 3], scale: 1, ease: [30, -20.04], cost: 0.2, fits: false },
  },
  { kind: 'bad-thread', trouble: { kind: 'empty' } },
  { kind: 'bad-threads', trouble: { kind: 'not-threads', format: null } },
];

describe('every trouble has a sentence', () => {
  test.each(troubles)('$kind', (trouble) => {
    const words = troubleInWords(trouble);
    expect(words).toMatch(/^[A-Z"-].*[.?]$/s);
    expect(words).not.toMatch(/undefined|\[object|NaN|\n/);
    expect(words.length).toBeLessThan(400);
  });

  test('the door says nothing of its own: no sentence about trouble stands in src/cli', () => {
    const folder = fileURLToPath(new URL('../../src/cli', import.meta.url));
    const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
      entry.isFile(),
    );
    const thrown = files.flatMap(({ name, parentPath }) =>
      [...readFileSync(join(parentPath, name), 'utf8').matchAll(/new (?:Range|Type)?Error\(['"`]/g)].map(
        () => name,
      ),
    );
    expect(thrown).toEqual([]);
  });
});
