import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addPin, updatePins } from '#pattern/change/edit-pins.ts';
import { removePins } from '#pattern/change/remove-pins.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { OpenDesign } from '../../src/bench/document/open-design.ts';
import { openMemory } from '../../src/bench/store/database.ts';
import { DesignJournal, type Saved } from '../../src/bench/store/design-journal.ts';
import { createDesign, listDesigns, readDesign } from '../../src/bench/store/designs.ts';
import { listVersions, readVersion, versionsToDrop } from '../../src/bench/store/versions.ts';

const database = await openMemory();

const start: Pattern = patternFromPins([
  { x: 0, y: 0 },
  { x: 5, y: 0 },
]);

async function opened(pattern: Pattern) {
  const id = await createDesign(database, { pattern, pictures: new Map() }, 'Try');
  return reopened(id);
}

async function reopened(id: string) {
  const stored = (await readDesign(database, id))!;
  const { pattern, past, future, card } = stored;
  const state = { pattern, past, future, editable: true };
  const said: Saved[] = [];
  const journal = new DesignJournal(database, card, state, (now) => said.push(now));
  return { id, design: new OpenDesign(state, journal), journal, said };
}

/** What a hand does: adds, moves, removes, undoes, does again, goes away and comes back. */
const act = fc.constantFrom('add', 'move', 'remove', 'undo', 'undo', 'redo', 'settle', 'reopen');

test('whatever is done and undone, the design opens as it was left, with all its steps', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 120 }), async (acts) => {
      let work = await opened(start);
      for (const [index, one] of acts.entries()) {
        const { design, journal } = work;
        const { pattern } = design.state();
        const last = pattern.pins.at(-1);
        if (one === 'add') design.edit(addPin(pattern, { x: index, y: index / 2 }).change, 'Added a pin');
        if (one === 'move' && last)
          design.edit(updatePins(pattern, [{ ...last, x: last.x + 1 }]), 'Moved a pin');
        if (one === 'remove' && last) design.edit(removePins(pattern, [last.id]), 'Removed a pin');
        if (one === 'undo') design.undo();
        if (one === 'redo') design.redo();
        if (one === 'settle') await journal.settled();
        if (one === 'reopen') {
          await journal.settled();
          work = await reopened(work.id);
        }
      }
      await work.journal.settled();
      const { pattern, past, future } = work.design.state();
      const stored = (await readDesign(database, work.id))!;
      expect(stored.pattern).toEqual(pattern);
      expect(stored.past).toEqual(past);
      expect(stored.future).toEqual(future);
    }),
    { numRuns: 40 },
  );
});

test('more steps than are kept: the oldest are forgotten, at least 200 stay, and nothing else is lost', async () => {
  const { id, design, journal } = await opened(start);
  for (let index = 0; index < 620; index++) {
    design.edit(addPin(design.state().pattern, { x: index, y: 1 }).change, 'Added a pin');
    if (index % 7 === 0) await journal.settled();
  }
  await journal.settled();
  const stored = (await readDesign(database, id))!;
  expect(stored.pattern.pins).toHaveLength(622);
  expect(stored.past.length).toBeGreaterThanOrEqual(200);
  expect(stored.past.length).toBeLessThanOrEqual(500);
  const again = await reopened(id);
  for (let index = 0; index < 200; index++) again.design.undo();
  await again.journal.settled();
  expect((await readDesign(database, id))!.pattern.pins).toHaveLength(422);
});

test('what another page wrote meanwhile is not written over: this page puts its own on the shelf as a copy', async () => {
  const one = await opened(start);
  const other = await reopened(one.id);
  other.design.edit(addPin(other.design.state().pattern, { x: 9, y: 9 }).change, 'Added a pin');
  await other.journal.settled();
  one.design.edit(addPin(one.design.state().pattern, { x: 1, y: 9 }).change, 'Added a pin');
  await one.journal.settled();
  expect(one.said.at(-1)).toEqual({ at: 'copied', name: 'Try (copy)' });
  const pinsOf = async (id: string) => (await readDesign(database, id))!.pattern.pins.at(-1);
  expect(await pinsOf(one.id)).toMatchObject({ x: 9, y: 9 });
  const [copy] = (await listDesigns(database)).filter(({ name }) => name === 'Try (copy)');
  expect(await pinsOf(copy!.id)).toMatchObject({ x: 1, y: 9 });
});

test('a write that fails in the midst leaves the design as it was, and the next one makes up for it', async () => {
  const { id, design, journal, said } = await opened(start);
  const add = (x: number) => design.edit(addPin(design.state().pattern, { x, y: 1 }).change, 'Added a pin');
  add(1);
  add(2);
  await journal.settled();
  design.undo();
  await journal.settled();
  const before = (await readDesign(database, id))!;
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = () => {
    throw new DOMException('no room', 'QuotaExceededError');
  };
  add(3);
  await journal.settled();
  IDBObjectStore.prototype.put = put;
  expect(said.at(-1)).toEqual({ at: 'failed', why: 'full' });
  expect(await readDesign(database, id)).toEqual(before);
  add(4);
  await journal.settled();
  const after = (await readDesign(database, id))!;
  expect(after.pattern).toEqual(design.state().pattern);
  expect(after.past).toHaveLength(3);
});

describe('versions', () => {
  const DAY = 24 * 60 * 60 * 1000;

  test('the last twenty are kept, and the last of each of fourteen days', () => {
    const now = 100 * DAY + 5000;
    const versions = Array.from({ length: 300 }, (_, index) => ({
      design: 'd',
      number: index + 1,
      saved: now - (299 - index) * (DAY / 10),
      pins: 1,
    }));
    const dropped = new Set(versionsToDrop(versions, now).map(({ number }) => number));
    const kept = versions.filter(({ number }) => !dropped.has(number));
    expect(kept.slice(-19).map(({ number }) => number)).toEqual(
      versions.slice(-19).map(({ number }) => number),
    );
    const days = kept.map(({ saved }) => Math.floor(saved / DAY));
    for (let day = 88; day <= 98; day++) expect(days).toContain(day);
    expect(kept.length).toBeLessThanOrEqual(19 + 14);
  });

  test('a state is kept when a design that was opened is first changed', async () => {
    const { id, design, journal } = await opened(start);
    design.edit(addPin(start, { x: 3, y: 3 }).change, 'Added a pin');
    await journal.settled();
    const versions = await listVersions(database, id);
    expect(versions).toHaveLength(1);
    expect(await readVersion(database, versions[0]!)).toEqual(start);
  });
});
