// Bundles the program into dist/pinlight.mjs: one start of Node reads one file instead of hundreds.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('..', import.meta.url));
const dist = join(home, 'dist');
const seal = join(dist, '.source-hash');

/**
 * Packages that stay outside the bundle: those with binaries or data files of their own, and those
 * that only some verbs need.
 */
const OUTSIDE = ['sharp', 'pdfkit', 'fontkit', '@expo-google-fonts/source-sans-3', 'dejavu-fonts-ttf'];

/** Whether an import stays as it is in a bundle. @param {string} name */
export const staysOutside = (name) =>
  name.startsWith('node:') || OUTSIDE.some((kept) => name === kept || name.startsWith(`${kept}/`));

/** Builds dist/ where the sources have changed since it was built. */
export async function buildIfChanged() {
  const sources = hashOfSources();
  if (existsSync(seal) && readFileSync(seal, 'utf8') === sources) return;
  await build(sources);
}

async function build(sources = hashOfSources()) {
  const { rolldown } = await import('rolldown');
  const bundle = await rolldown({
    input: join(home, 'src/cli/main.ts'),
    platform: 'node',
    external: staysOutside,
  });
  // Built aside and moved into place, so that a second process never runs half a program.
  const aside = join(home, '.cache', `build-${process.pid}`);
  rmSync(aside, { recursive: true, force: true });
  mkdirSync(aside, { recursive: true });
  await bundle.write({
    dir: aside,
    format: 'esm',
    entryFileNames: 'pinlight.mjs',
    chunkFileNames: '[name]-[hash].mjs',
  });
  await bundle.close();
  writeFileSync(join(aside, '.source-hash'), sources);
  replaceFolder(aside, dist);
}

/** @param {string} fresh @param {string} place */
function replaceFolder(fresh, place) {
  const old = `${fresh}-old`;
  try {
    if (existsSync(place)) renameSync(place, old);
    renameSync(fresh, place);
  } catch {
    // Another process put the same build there first.
    rmSync(fresh, { recursive: true, force: true });
  }
  rmSync(old, { recursive: true, force: true });
}

function hashOfSources() {
  const hash = createHash('sha256');
  const files = [
    ...filesUnder(join(home, 'src')),
    join(home, 'package.json'),
    fileURLToPath(import.meta.url),
  ];
  for (const file of files) {
    hash.update(relative(home, file)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
}

/** @param {string} folder @returns {string[]} */
function filesUnder(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await build();
