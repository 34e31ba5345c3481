// For a first look: the whole job on the example scan, which makes the folder ready/, and then the bench, served on
// this machine alone, with the example open.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { buildBenchIfChanged } from './build.mjs';
import { serveBench } from './serve-bench.mjs';

/** What a browser keeps belongs to the address, so that it is the same every time. */
const PORT = 4786;

const home = fileURLToPath(new URL('..', import.meta.url));
const about = [
  ...['--name', 'Rosehip edging'],
  ...['--maker', 'the Pinlight project'],
  ...['--source', 'examples/rosehip-edging.jpg, an invented pattern'],
  ...['--permission', 'MIT licence: use it freely'],
];
const args = ['bin/pinlight.mjs', 'ready', 'examples/rosehip-edging.jpg', '-o', 'ready', ...about];

const run = spawnSync(process.execPath, args, { cwd: home, stdio: 'inherit' });
// Faults in the example are no failure of the program.
if (run.status !== 0 && run.status !== 1) process.exit(run.status ?? 1);
console.log(`
Look at these in the folder ready/:
  01-summary.pdf            in words: what was found, moved, proposed and is in doubt
  02-before-and-after.png   where each pin stood, and where it stands now
  04-prick-through.pdf      clean dots, a marking guide, and in which order to prick
  05-under-film.pdf         the complete sheet, to stick on the card under film

Your own scan:  npx pinlight ready my-scan.jpg -o my-folder
All it can do:  npx pinlight --help
`);

await buildBenchIfChanged();
const { address } = await serveBench({ port: PORT }).catch(() => {
  console.log(`Something else uses port ${PORT}, so that the bench has another address this time.`);
  console.log(
    'Patterns that a browser keeps belong to an address: those kept at the usual one are not shown here.',
  );
  return serveBench({ port: 0 });
});
console.log(`The bench is open, on this machine alone, at

  ${address}#/example

It stays there until you end this with Ctrl+C.`);
