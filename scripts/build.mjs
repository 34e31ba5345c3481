// Builds what people run: the command into dist/cli (one start of Node reads one file instead of hundreds), and the
// bench into dist/bench, as static files.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('..', import.meta.url));

/**
 * Packages that stay outside the command's bundle: those with binaries or data files of their own, and those
 * that only some verbs need.
 */
const OUTSIDE = ['sharp', 'pdfkit', 'fontkit', '@expo-google-fonts/source-sans-3', 'dejavu-fonts-ttf'];

/** Whether an import stays as it is in a bundle. @param {string} name */
export const staysOutside = (name) =>
  name.startsWith('node:') || OUTSIDE.some((kept) => name === kept || name.startsWith(`${kept}/`));

/** Builds the command where its sources have changed since it was built. */
export const buildCommandIfChanged = () => buildIfChanged('cli', ['src', 'package.json'], bundleCommand);

/** Builds the bench where its sources have changed since it was built. */
export const buildBenchIfChanged = () =>
  buildIfChanged('bench', ['src', 'package-lock.json', 'vite.config.ts', 'examples'], bundleBench);

/** @param {string} into */
async function bundleCommand(into) {
  const { rolldown } = await import('rolldown');
  const bundle = await rolldown({
    input: join(home, 'src/cli/main.ts'),
    platform: 'node',
    external: staysOutside,
  });
  await bundle.write({
    dir: into,
    format: 'esm',
    entryFileNames: 'pinlight.mjs',
    chunkFileNames: '[name]-[hash].mjs',
  });
  await bundle.close();
}

/**
 * In a process of its own, since what is in NODE_ENV here would come into the bench.
 * @param {string} into
 */
async function bundleBench(into) {
  const vite = join(home, 'node_modules/vite/bin/vite.js');
  const run = spawnSync(process.execPath, [vite, 'build', '--outDir', into, '--logLevel', 'warn'], {
    cwd: home,
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, NODE_ENV: 'production' },
  });
  if (run.status !== 0) throw new Error('The bench could not be built; what stands above says why.');
}

/**
 * @param {string} name the folder in dist
 * @param {readonly string[]} sources what it is built from
 * @param {(into: string) => Promise<void>} bundle
 */
async function buildIfChanged(name, sources, bundle) {
  const place = join(home, 'dist', name);
  const seal = join(place, '.source-hash');
  const hash = hashOf([...sources, relative(home, fileURLToPath(import.meta.url))]);
  if (existsSync(seal) && readFileSync(seal, 'utf8') === hash) return;
  // Built aside and moved into place, so that a second process never runs half a program.
  const aside = join(home, '.cache', `build-${name}-${process.pid}`);
  rmSync(aside, { recursive: true, force: true });
  mkdirSync(aside, { recursive: true });
  await bundle(aside);
  writeFileSync(join(aside, '.source-hash'), hash);
  replaceFolder(aside, place);
}

/** @param {string} fresh @param {string} place */
function replaceFolder(fresh, place) {
  const old = `${fresh}-old`;
  mkdirSync(dirname(place), { recursive: true });
  try {
    if (existsSync(place)) renameSync(place, old);
    renameSync(fresh, place);
  } catch {
    // Another process put the same build there first.
    rmSync(fresh, { recursive: true, force: true });
  }
  rmSync(old, { recursive: true, force: true });
}

/** @param {readonly string[]} sources files and folders */
function hashOf(sources) {
  const hash = createHash('sha256');
  for (const file of sources.map((source) => join(home, source)).flatMap(filesUnder)) {
    hash.update(relative(home, file)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
}

/** @param {string} place a file or folder @returns {string[]} */
function filesUnder(place) {
  if (!existsSync(place)) return [];
  try {
    return readdirSync(place, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort();
  } catch {
    return [place];
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await buildCommandIfChanged();
  await buildBenchIfChanged();
}
