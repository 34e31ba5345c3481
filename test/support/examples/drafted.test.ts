import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { silent } from '#base/progress.ts';
import { look } from '#jobs/look.ts';
import { straightenPattern } from '#jobs/true/straighten.ts';
import { readPattern } from '#pattern/file/read.ts';
import { writePattern } from '#pattern/file/write.ts';
import { drafted } from './drafted.ts';
import { galleryPage } from './gallery-page.ts';

const home = new URL('../../../', import.meta.url);
const all = drafted();
const everything = { take: null, leave: [], addMissing: false, dropStray: false };

describe.each(all)('$entry.name, an example that was drafted', ({ entry, pattern }) => {
  const text = writePattern(pattern);

  test('stands in examples/drafted as it is drafted now (node examples/make.mjs writes it anew)', () => {
    expect(readFileSync(new URL(`examples/drafted/${entry.name}.json`, home), 'utf8')).toBe(text);
  });

  test('is found sound by look, and left where it is by true', () => {
    const read = readPattern(text);
    if (!read.ok) throw new Error(JSON.stringify(read.trouble));
    expect(look(read.value, silent).findings.map(({ sentence }) => sentence)).toEqual([]);
    const trued = straightenPattern(read.value, {}, everything, silent);
    if (!trued.ok) throw new Error(JSON.stringify(trued.trouble));
    // Half of the last digit that a file carries comes on top.
    expect(trued.value.result.moved.farthest).toBeLessThanOrEqual(0.001);
    expect([trued.value.result.missing, trued.value.result.stray]).toEqual([[], []]);
  });

  test('says whose it is and what may be done with it, and has a name to be asked for by', () => {
    expect(entry.name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    for (const part of ['name', 'maker', 'source', 'permission'] as const)
      expect(entry.about[part], part).toBeTruthy();
  });

  test('has its picture (node scripts/pictures.mjs makes it)', () => {
    expect(existsSync(new URL(`docs/images/gallery-${entry.name}.png`, home))).toBe(true);
  });
});

test('no name is used twice, and no example or picture is left of one that is gone', () => {
  const names = all.map(({ entry }) => entry.name).sort();
  expect(new Set(names).size).toBe(names.length);
  const files = readdirSync(new URL('examples/drafted/', home)).map((file) => file.replace(/\.json$/, ''));
  expect(files.sort()).toEqual(names);
  const pictures = readdirSync(new URL('docs/images/', home)).flatMap(
    (file) => /^gallery-(.*)\.png$/.exec(file)?.[1] ?? [],
  );
  expect(pictures.sort()).toEqual(names);
});

// `npx vitest run test/support/examples/drafted.test.ts -u` writes the page anew.
test('the gallery is the present one', async () => {
  await expect(galleryPage(all)).toMatchFileSnapshot('../../../docs/gallery.md');
});
