import { posix } from 'node:path';

/** A source file by its path from the project's home, and its text. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** Which layers each layer may import; nothing but `cli` may name Node, and no craft act another. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  base: ['base'],
  pattern: ['pattern', 'base'],
  craft: ['craft', 'pattern', 'base'],
  paper: ['paper', 'pattern', 'base'],
  jobs: ['jobs', 'paper', 'craft', 'pattern', 'base'],
  cli: ['cli', 'jobs', 'paper', 'craft', 'pattern', 'base'],
  bench: ['bench', 'jobs', 'paper', 'craft', 'pattern', 'base'],
};

/** Packages that only run in Node: their home is the Node door. */
const NODE_ONLY = ['sharp', 'commander'];

/** Packages that only run in a browser: their home is the browser door. */
const BROWSER_ONLY = ['react', 'react-dom', 'react-aria-components', 'idb', 'comlink'];

/** Every import that goes against the direction of the layers, as one sentence each. */
export function wrongWays(files: readonly SourceFile[]): string[] {
  return files.flatMap((file) =>
    importsOf(file.text).flatMap((name) => {
      const why = whyWrong(file.path, name);
      return why === null ? [] : [`${file.path} imports ${name}: ${why}`];
    }),
  );
}

/** Folders under `src/` that import each other in a ring, seen two levels deep (`craft/trace`, `base/fit`). */
export function folderRings(files: readonly SourceFile[]): string[] {
  const edges = new Map<string, Set<string>>();
  for (const file of files) {
    const from = folderOf(file.path);
    for (const name of importsOf(file.text)) {
      const target = targetOf(file.path, name);
      if (target === null) continue;
      const to = folderOf(target);
      if (to === from) continue;
      if (!edges.has(from)) edges.set(from, new Set());
      edges.get(from)?.add(to);
    }
  }
  return [...edges.keys()].sort().flatMap((start) => {
    const ring = ringFrom(start, edges);
    return ring === null ? [] : [ring.join(' -> ')];
  });
}

/** The names in `import … from 'x'`, `export … from 'x'`, `import 'x'` and `import('x')`. */
export function importsOf(text: string): string[] {
  const withoutComments = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
  const pattern =
    /(?:^|\n)\s*(?:import|export)\b[^'"`;]*?\bfrom\s*['"]([^'"]+)['"]|(?:^|\n)\s*import\s*['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]\s*\)/g;
  return [...withoutComments.matchAll(pattern)].map((found) => found[1] ?? found[2] ?? found[3] ?? '');
}

function whyWrong(path: string, name: string): string | null {
  const layer = path.split('/')[1] ?? '';
  const allowed = MAY_IMPORT[layer];
  if (allowed === undefined) return `src/${layer} is no known layer`;
  const target = targetOf(path, name);
  if (target === null) {
    const isNode = name.startsWith('node:') || NODE_ONLY.some((one) => name === one);
    if (layer !== 'cli' && isNode) return `${layer} must run without Node`;
    const isBrowser = BROWSER_ONLY.some((one) => name === one || name.startsWith(`${one}/`));
    return layer !== 'bench' && isBrowser ? `${layer} must run without a browser` : null;
  }
  // The program's own name and version stand in package.json, and nowhere else.
  if (target === 'package.json' && layer === 'cli') return null;
  // The example lies outside of the sources; the bench only takes its address.
  if (target.startsWith('examples/') && target.endsWith('?url') && layer === 'bench') return null;
  const [, toLayer = '', toAct = ''] = target.split('/');
  if (!allowed.includes(toLayer)) return `${layer} may not know ${toLayer}`;
  if (layer === 'craft' && toLayer === 'craft' && toAct !== path.split('/')[2]) {
    return 'no craft act may know another';
  }
  return null;
}

/** The file that an import names, from the project's home; null for a package. */
function targetOf(path: string, name: string): string | null {
  if (name.startsWith('#')) return `src/${name.slice(1)}`;
  return name.startsWith('.') ? posix.normalize(posix.join(posix.dirname(path), name)) : null;
}

/** `src/craft/trace/rays/cast.ts` lies in `craft/trace`, `src/base/random.ts` in `base`. */
const folderOf = (path: string): string => posix.dirname(path).split('/').slice(1, 3).join('/');

function ringFrom(start: string, edges: ReadonlyMap<string, ReadonlySet<string>>): string[] | null {
  const seen = new Set<string>();
  const walk = (at: string, trail: readonly string[]): string[] | null => {
    for (const next of edges.get(at) ?? []) {
      if (next === start) return [...trail, start];
      if (seen.has(next)) continue;
      seen.add(next);
      const ring = walk(next, [...trail, next]);
      if (ring !== null) return ring;
    }
    return null;
  };
  return walk(start, [start]);
}
