import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { folderRings, importsOf, type SourceFile, wrongWays } from './imports.ts';

const home = fileURLToPath(new URL('../..', import.meta.url));

const sources: SourceFile[] = readdirSync(join(home, 'src'), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
  .map((entry) => join(entry.parentPath, entry.name))
  .map((file) => ({
    path: relative(home, file).split(sep).join('/'),
    text: readFileSync(file, 'utf8'),
  }));

const planted = (path: string, text: string): SourceFile[] => [...sources, { path, text }];

describe('imports go one way', () => {
  test('file by file', () => expect(wrongWays(sources)).toEqual([]));
  test('folder by folder', () => expect(folderRings(sources)).toEqual([]));
});

describe('the check bites', () => {
  test.each([
    ['src/base/planted.ts', "import { x } from '#pattern/pattern.ts';", 'base may not know pattern'],
    ['src/base/planted.ts', "export * from '../pattern/pattern.ts';", 'base may not know pattern'],
    ['src/paper/sheet/planted.ts', "import type { X } from '#craft/look/x.ts';", 'paper may not know craft'],
    ['src/craft/look/planted.ts', "import { x } from '#craft/true/x.ts';", 'no craft act may know another'],
    ['src/craft/look/planted.ts', "import { x } from '../true/x.ts';", 'no craft act may know another'],
    ['src/jobs/planted.ts', "import { x } from '#cli/main.ts';", 'jobs may not know cli'],
    ['src/jobs/planted.ts', "import { readFileSync } from 'node:fs';", 'jobs must run without Node'],
    ['src/jobs/planted.ts', "const sharp = await import('sharp');", 'jobs must run without Node'],
    ['src/bench/planted.ts', "import { x } from '#cli/main.ts';", 'bench may not know cli'],
    ['src/cli/planted.ts', "import { x } from '../bench/main.tsx';", 'cli may not know bench'],
    ['src/bench/planted.ts', "import 'node:fs';", 'bench must run without Node'],
    ['src/jobs/planted.ts', "import { get } from 'idb';", 'jobs must run without a browser'],
    ['src/attic/planted.ts', "import 'zod';", 'src/attic is no known layer'],
  ])('%s: %s', (path, text, why) => {
    expect(wrongWays(planted(path, text))).toEqual([expect.stringContaining(why)]);
  });

  test('on two folders that import each other', () => {
    const rings = folderRings([
      { path: 'src/base/fit/line.ts', text: "import { x } from '../picture/edge.ts';" },
      { path: 'src/base/picture/edge.ts', text: "import { y } from '#base/fit/circle.ts';" },
    ]);
    expect(rings).toContain('base/fit -> base/picture -> base/fit');
  });

  test('on every way of writing an import', () => {
    const text = [
      "import a from 'one';",
      'import {\n  type B,\n  c,\n} from "two";',
      "export { d } from 'three';",
      "import 'four';",
      "const five = () => import('five');",
      "// import no from 'comment';",
      "/* import no from 'comment'; */",
      "import data from 'six' with { type: 'json' };",
    ].join('\n');
    expect(importsOf(text)).toEqual(['one', 'two', 'three', 'four', 'five', 'six']);
  });
});
