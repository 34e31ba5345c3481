import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { silent } from '#base/progress.ts';
import { contentHash, type WholeDesign } from '#jobs/backup/backup.ts';
import { type BackupSource, packBackup } from '#jobs/backup/pack.ts';
import { listBackup } from '#jobs/backup/read.ts';
import { type BackupSink, restoreBackup } from '#jobs/backup/restore.ts';
import { openToWork } from '#jobs/open.ts';
import { changeBetween } from '#pattern/change/between.ts';
import { encodeUtf8 } from '#pattern/container/utf8.ts';
import { patternFromPins } from '#pattern/pins.ts';

const twoPins = (shift: number) =>
  patternFromPins([
    { x: shift, y: 0.5 },
    { x: shift + 5, y: 1.25 },
  ]);

const design = (id: string, shift: number): WholeDesign => ({
  ...{ id, name: `Design ${id}`, created: 1_000, changed: 2_000 + shift },
  pattern: twoPins(shift),
  past: [{ words: 'Began', change: changeBetween(patternFromPins([{ x: shift, y: 9 }]), twoPins(shift)) }],
  future: [{ words: 'Moved the pins', change: changeBetween(twoPins(shift), twoPins(shift + 2)) }],
  pictures: new Map([['paper.png', new Uint8Array([1, 2, 3, shift])]]),
  versions: [{ saved: 1_500, pattern: patternFromPins([{ x: shift, y: 9 }]) }],
});

async function packed(designs: readonly WholeDesign[], settings = {}): Promise<Uint8Array> {
  const source: BackupSource = {
    begin: async () => ({ made: Date.UTC(2024, 4, 3), count: designs.length }),
    design: async (index) => designs[index]!,
    settings: async () => settings,
  };
  const pieces: Uint8Array[] = [];
  await packBackup(source, (piece) => pieces.push(piece.slice()), silent);
  return new Uint8Array(Buffer.concat(pieces));
}

/** A shelf in memory. */
function shelf(designs: readonly WholeDesign[] = []) {
  const held = new Map(designs.map((one) => [one.id, one]));
  const settings: Record<string, unknown> = {};
  const sink: BackupSink = {
    held: async (id) => held.get(id) ?? null,
    put: async (one) => void held.set(one.id, one),
    putSettings: async (given) => void Object.assign(settings, given),
  };
  return { held, settings, sink };
}

test('everything comes back equal on an empty shelf, settings with it', async () => {
  const designs = [design('a', 0), design('b', 7)];
  const { held, settings, sink } = shelf();
  const told = await restoreBackup(await packed(designs, { thread: [{ name: 'fine' }] }), sink, silent);
  expect(told).toMatchObject({ ok: true, value: { came: ['Design a', 'Design b'], same: [], copies: [] } });
  for (const one of designs) {
    const back = held.get(one.id)!;
    expect(contentHash(back)).toBe(contentHash(one));
    expect(back).toMatchObject({ name: one.name, created: one.created, changed: one.changed });
    expect(back).toMatchObject({ versions: one.versions, past: one.past, future: one.future });
  }
  expect(settings).toEqual({ thread: [{ name: 'fine' }] });
});

test('what is here is never written over: equal designs are left, others come beside it, and only once', async () => {
  const file = await packed([design('a', 0), design('b', 7)]);
  const mine = { ...design('b', 8), name: 'Mine' };
  const { held, sink } = shelf([design('a', 0), mine]);
  const first = await restoreBackup(file, sink, silent);
  expect(first).toMatchObject({
    ok: true,
    value: { came: [], same: ['Design a'], copies: ['Design b (from the backup)'] },
  });
  expect(held.get('b')).toBe(mine);
  expect(held.size).toBe(3);
  const second = await restoreBackup(file, sink, silent);
  expect(second).toMatchObject({ ok: true, value: { came: [], same: ['Design a', 'Design b'], copies: [] } });
  expect(held.size).toBe(3);
});

test('one damaged design is left out and named; the others come', async () => {
  const file = await packed([design('a', 1), design('b', 7)]);
  const picture = Buffer.from(file).indexOf(Buffer.from([1, 2, 3, 7]));
  file[picture] = 99;
  const { held, sink } = shelf();
  const told = await restoreBackup(file, sink, silent);
  expect(told).toMatchObject({ ok: true, value: { came: ['Design a'], damaged: ['Design b'] } });
  expect([...held.keys()]).toEqual(['a']);
});

describe('files that are no whole backup do nothing', () => {
  const manifest = (change: object) =>
    encodeUtf8(JSON.stringify({ format: 'pinlight-backup', version: 1, patterns: 1, ...change }));
  const zip = (files: Record<string, Uint8Array>) => zipSync(files);
  test.each<[string, () => Promise<Uint8Array> | Uint8Array, string]>([
    ['nothing', () => new Uint8Array(), 'not-a-backup'],
    ['a text', () => encodeUtf8('{"pins":[]}'), 'not-a-backup'],
    ['another zip', () => zip({ 'a.txt': encodeUtf8('a') }), 'not-a-backup'],
    ['a zip with folders in its names', () => zip({ '../backup.json': manifest({}) }), 'not-a-backup'],
    ['another format', () => zip({ 'backup.json': manifest({ format: 'x' }) }), 'not-a-backup'],
    ['a newer backup', () => zip({ 'backup.json': manifest({ version: 3 }) }), 'backup-newer'],
    ['newer patterns', () => zip({ 'backup.json': manifest({ patterns: 99 }) }), 'backup-newer'],
    ['no list', () => zip({ 'backup.json': encodeUtf8('{') }), 'backup-damaged'],
    ['a misshapen list', () => zip({ 'backup.json': manifest({ designs: 5 }) }), 'backup-damaged'],
    ['one cut off', async () => (await packed([design('a', 0)])).slice(0, -30), 'backup-damaged'],
    ['one cut in half', async () => (await packed([design('a', 0)])).slice(0, 500), 'backup-damaged'],
  ])('%s', async (_name, make, kind) => {
    const { held, settings, sink } = shelf();
    const told = await restoreBackup(await make(), sink, silent);
    expect(told).toMatchObject({ ok: false, trouble: { kind } });
    expect(held.size).toBe(0);
    expect(settings).toEqual({});
  });

  test('a bomb is not unpacked: its entries claim too much', async () => {
    const files: Record<string, Uint8Array> = { 'backup.json': manifest({}) };
    const zeros = zipSync({ zeros: new Uint8Array(64 * 1024 * 1024) });
    files['zeros.bin'] = new Uint8Array(1);
    const bomb = Buffer.from(zipSync(files));
    // The directory's record of the entry is made to claim 4 GiB, packed small.
    const at = bomb.lastIndexOf(Buffer.from('zeros.bin')) - 46;
    bomb.writeUInt32LE(zeros.length, at + 20);
    bomb.writeUInt32LE(0xfffffff0, at + 24);
    expect(listBackup(new Uint8Array(bomb))).toEqual({ ok: false, trouble: { kind: 'backup-too-large' } });
  });

  test('more entries than any backup has', () => {
    const files: Record<string, Uint8Array> = { 'backup.json': manifest({}) };
    for (let index = 0; index <= 50_000; index++) files[`e${index}`] = new Uint8Array();
    expect(listBackup(zip(files))).toEqual({ ok: false, trouble: { kind: 'backup-too-large' } });
  });
});

test('a backup is not opened as a pattern, and the sentence says where it belongs', async () => {
  const opened = openToWork(
    await packed(Array.from({ length: 20 }, (_, index) => design(`d${index}`, index))),
  );
  expect(opened).toEqual({ ok: false, trouble: { kind: 'is-a-backup' } });
});
