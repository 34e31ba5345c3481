// The whole job on the example scan, for a first look: makes the folder ready/ and says what to open.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const home = fileURLToPath(new URL('..', import.meta.url));
const about = [
  ...['--name', 'Rosehip edging'],
  ...['--maker', 'the Pinlight project'],
  ...['--source', 'examples/rosehip-edging.jpg, an invented pattern'],
  ...['--permission', 'MIT licence: use it freely'],
];
const args = ['bin/pinlight.mjs', 'ready', 'examples/rosehip-edging.jpg', '-o', 'ready', ...about];

const run = spawnSync(process.execPath, args, { cwd: home, stdio: 'inherit' });
if (run.status === 0 || run.status === 1) {
  console.log(`
Look at these in the folder ready/:
  01-summary.pdf            in words: what was found, moved, proposed and is in doubt
  02-before-and-after.png   where each pin stood, and where it stands now
  04-prick-through.pdf      clean dots, a marking guide, and in which order to prick
  05-under-film.pdf         the complete sheet, to stick on the card under film

Your own scan:  npx pinlight ready my-scan.jpg -o my-folder
All it can do:  npx pinlight --help`);
}
// Faults in the example are no failure of the program.
process.exitCode = run.status === 1 ? 0 : (run.status ?? 1);
