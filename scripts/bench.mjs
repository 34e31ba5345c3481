// Measures: `npm run bench` runs every file in bench/ and bench/browser/, `npm run bench -- trace` only that one.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';
import { buildBenchIfChanged } from './build.mjs';

const home = fileURLToPath(new URL('..', import.meta.url));
/** Those in bench/browser need the built bench and a Chromium. */
const places = ['bench', 'bench/browser'];
const known = places.flatMap((place) =>
  readdirSync(join(home, place))
    .filter((file) => file.endsWith('.ts'))
    .map((file) => file.slice(0, -3)),
);
const [name, ...args] = process.argv.slice(2);
const names = name === undefined ? known : [name];

for (const each of names) {
  const place = places.find((one) => existsSync(join(home, one, `${each}.ts`)));
  if (!place) {
    console.error(`There is no bench "${each}"; there are: ${known.join(', ')}.`);
    process.exit(2);
  }
  console.log(`\n== ${each}`);
  if (place === 'bench/browser') await buildBenchIfChanged();
  const status = await bench(place, each);
  if (status !== 0) process.exit(status);
}

/** @param {string} place @param {string} each */
async function bench(place, each) {
  const file = join(home, '.cache', 'bench', `${each}.mjs`);
  const bundle = await rolldown({
    input: join(home, place, `${each}.ts`),
    platform: 'node',
    // Every package stays what it is, so that a peer is measured as people would use it.
    external: (id) => !/^[./#]/.test(id) && !id.startsWith('/'),
  });
  await bundle.write({ file, format: 'esm', codeSplitting: false });
  await bundle.close();
  const run = spawnSync(process.execPath, ['--expose-gc', file, ...args], { cwd: home, stdio: 'inherit' });
  return run.status ?? 1;
}
