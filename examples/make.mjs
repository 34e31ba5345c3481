// Makes the examples anew, to the same pictures: `node examples/make.mjs`.
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { rolldown } from 'rolldown';

const home = fileURLToPath(new URL('..', import.meta.url));
const file = join(home, '.cache', 'examples', 'make.mjs');
const bundle = await rolldown({
  input: join(home, 'test/support/examples/make.ts'),
  platform: 'node',
  external: (id) => !/^[./#]/.test(id) && !id.startsWith('/'),
});
await bundle.write({ file, format: 'esm', codeSplitting: false });
await bundle.close();
const { make } = await import(pathToFileURL(file).href);
await make(join(home, 'examples'));
