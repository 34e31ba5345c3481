// Measures: `npm run bench` runs every file in bench/, `npm run bench -- trace` only that one.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

const home = fileURLToPath(new URL('..', import.meta.url));
const known = readdirSync(join(home, 'bench'))
  .filter((file) => file.endsWith('.ts'))
  .map((file) => file.slice(0, -3));
const [name, ...args] = process.argv.slice(2);
const names = name === undefined ? known : [name];

for (const each of names) {
  if (!existsSync(join(home, 'bench', `${each}.ts`))) {
    console.error(`There is no bench "${each}"; there are: ${known.join(', ')}.`);
    process.exit(2);
  }
  console.log(`\n== ${each}`);
  const status = await bench(each);
  if (status !== 0) process.exit(status);
}

/** @param {string} each */
async function bench(each) {
  const file = join(home, '.cache', 'bench', `${each}.mjs`);
  const bundle = await rolldown({
    input: join(home, 'bench', `${each}.ts`),
    platform: 'node',
    // Every package stays what it is, so that a peer is measured as people would use it.
    external: (id) => !/^[./#]/.test(id) && !id.startsWith('/'),
  });
  await bundle.write({ file, format: 'esm', codeSplitting: false });
  await bundle.close();
  const run = spawnSync(process.execPath, ['--expose-gc', file, ...args], { cwd: home, stdio: 'inherit' });
  return run.status ?? 1;
}
