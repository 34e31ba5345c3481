// Installs the packages that package-lock.json names, unless exactly those are there already.
// Runs before anything is installed, so it may import nothing but what Node itself brings.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { lstatSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('..', import.meta.url));
const modules = new URL('../node_modules', import.meta.url);
const seal = new URL('../node_modules/.lock-hash', import.meta.url);

/** Makes node_modules match package-lock.json. Throws where that cannot be done. */
export function bootstrap() {
  const wanted = createHash('sha256')
    .update(readFileSync(new URL('../package-lock.json', import.meta.url)))
    .digest('hex');
  if (isLinkedElsewhere() || sealed() === wanted) return;
  console.error(
    'Setting up: installing the packages this program is built from (once, about half a minute) …',
  );
  const args = ['ci', '--include=dev', '--ignore-scripts'];
  const npm = process.env.npm_execpath;
  const run = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, ...args], { cwd: home, stdio: ['ignore', 2, 2] })
    : spawnSync('npm', args, { cwd: home, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' });
  if (run.status !== 0) {
    throw new Error('Could not install the packages: see what npm says above, then try again.');
  }
  writeFileSync(seal, wanted);
}

/** A node_modules that is a link belongs to another checkout, which looks after it. */
function isLinkedElsewhere() {
  return lstatSync(modules, { throwIfNoEntry: false })?.isSymbolicLink() ?? false;
}

function sealed() {
  try {
    return readFileSync(seal, 'utf8');
  } catch {
    return null;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    bootstrap();
  } catch (trouble) {
    console.error(trouble instanceof Error ? trouble.message : trouble);
    process.exitCode = 1;
  }
}
