import fc from 'fast-check';
import { strFromU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { silent } from '#base/progress.ts';
import type { WholeDesign } from '#jobs/backup/backup.ts';
import { restoreBackup } from '#jobs/backup/restore.ts';
import { MOST_STEPS, readSteps, writeSteps } from '#jobs/backup/steps.ts';
import { restoredInWords } from '#jobs/words/backup.ts';
import { changeBetween } from '#pattern/change/between.ts';
import { applyChange, type Change } from '#pattern/change/change.ts';
import { type Step, writeStep } from '#pattern/change/step.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import { encodeUtf8 } from '#pattern/container/utf8.ts';
import { roundPattern } from '#pattern/file/round.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { arbitraryPattern } from '../../support/arbitrary-pattern.ts';
import { backupOf } from '../../support/bench/backup-of.ts';
import { reread } from '../../support/reread.ts';

const step = (before: Pattern, after: Pattern): Step => ({
  words: 'A step',
  change: changeBetween(before, after),
});

const any = arbitraryPattern({ fine: true });

test('steps lead to the pattern as its file holds it, and from it, whatever was done', () => {
  fc.assert(
    fc.property(any, any, any, (first, now, last) => {
      const written = writeSteps({ past: [step(first, now)], future: [step(now, last)] });
      const read = readSteps(written.text, written.done, reread(now));
      expect(read?.past).toHaveLength(1);
      const [next] = read!.future;
      expect(roundPattern(applyChange(reread(now), next!.change))).toEqual(roundPattern(reread(last)));
    }),
    { numRuns: 60 },
  );
});

test('of too many steps those nearest to the pattern are kept', () => {
  const at = (x: number) => patternFromPins([{ x, y: 0 }]);
  const past = Array.from({ length: MOST_STEPS + 20 }, (_, x) => step(at(x), at(x + 1)));
  const written = writeSteps({ past, future: [] });
  expect(written.done).toBe(MOST_STEPS);
  const read = readSteps(written.text, written.done, at(MOST_STEPS + 20));
  expect(read!.past).toEqual(past.slice(20));
});

/** What came of a backup of one pattern, whose steps were made into this text. */
async function restoredWith(text: string | null, done: number, pattern: Pattern) {
  const files = unzipSync(new Uint8Array(await backupOf([{ name: 'Edging', pattern }])));
  const list = JSON.parse(strFromU8(files['backup.json']!));
  const { steps, ...rest } = list.designs[0];
  if (text === null) {
    // As it was before steps were put in.
    delete files[steps.file.entry];
    [list.version, list.designs[0]] = [1, rest];
  } else {
    const bytes = new Uint8Array(encodeUtf8(text));
    files[steps.file.entry] = bytes;
    list.designs[0].steps = {
      done,
      file: { ...steps.file, size: bytes.length, sha256: sha256Hex(bytes) },
    };
  }
  files['backup.json'] = new Uint8Array(encodeUtf8(JSON.stringify(list)));
  const held: WholeDesign[] = [];
  const told = await restoreBackup(
    zipSync(files),
    { held: async () => null, put: async (one) => void held.push(one), putSettings: async () => {} },
    silent,
  );
  if (!told.ok) throw new Error(told.trouble.kind);
  return { held: held[0]!, told: told.value };
}

const here = patternFromPins([
  { x: 0, y: 0 },
  { x: 5, y: 0 },
]);
const marked: Pattern = {
  ...here,
  marks: [{ id: 'm1', kind: 'number', at: { pin: here.pins[1]!.id }, value: 1 }],
};

test('a backup from before steps were put in still comes back whole', async () => {
  const { held, told } = await restoredWith(null, 0, here);
  expect(held).toMatchObject({ pattern: here, past: [], future: [] });
  expect(told).toMatchObject({ came: ['Edging'], lostSteps: 0 });
});

describe('steps that cannot be trusted are left out, and told; the pattern comes', () => {
  const line = (change: object) => writeStep({ words: 'A step', change: change as Change });
  const removal = { pins: { added: [], updated: [], removed: [{ index: 1, record: marked.pins[1] }] } };
  const moved = (x: number) => {
    const [pin] = here.pins;
    return { pins: { added: [], updated: [[pin, { ...pin, x }]], removed: [] } };
  };
  test.each<[string, string, number]>([
    ['no steps at all', 'nothing', 0],
    ['a line without words', '{"change":{"format":"pinlight-change","version":1}}', 0],
    ['more than a step has', line({}).replace('{', '{"more":1,'), 0],
    ['a part that no pattern has', line({ constructor: [1, 2] }), 0],
    ['a pin that lies nowhere', line(moved(1e9)), 0],
    ['made for another pattern', line({ unit: ['px', 'mm'] }), 0],
    ['one that leads elsewhere', line(moved(3)), 1],
    ['one that leaves a mark without its pin', line(removal), 0],
    ['more steps done than there are', '', 3],
    ['more steps than anybody made', Array.from({ length: MOST_STEPS + 1 }, () => line({})).join('\n'), 0],
  ])('%s', async (_name, text, done) => {
    const { held, told } = await restoredWith(text, done, marked);
    expect(held).toMatchObject({ pattern: marked, past: [], future: [] });
    expect(told).toMatchObject({ came: ['Edging'], lostSteps: 1 });
    expect(restoredInWords(told).join(' ')).toContain('The undo steps of 1 pattern were damaged');
  });

  test('while whole ones come', async () => {
    const { held, told } = await restoredWith(line(moved(3)), 0, marked);
    expect(held.future).toHaveLength(1);
    expect(told.lostSteps).toBe(0);
  });
});
