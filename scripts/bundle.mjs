// Makes one file of TypeScript and all that it imports, and runs it as a module: Node alone does not read TypeScript.
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { rolldown } from 'rolldown';

const home = fileURLToPath(new URL('..', import.meta.url));

/** The exports of a TypeScript file, by its path from the project's home. @param {string} path */
export async function imported(path) {
  const file = join(home, '.cache', 'bundles', `${path.replaceAll('/', '-')}.mjs`);
  const bundle = await rolldown({
    input: join(home, path),
    platform: 'node',
    external: (id) => !/^[./#]/.test(id) && !id.startsWith('/'),
  });
  await bundle.write({ file, format: 'esm', codeSplitting: false });
  await bundle.close();
  return import(pathToFileURL(file).href);
}
