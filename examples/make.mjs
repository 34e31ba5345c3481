// Makes the examples anew, to the same pictures and patterns: `node examples/make.mjs`.
import { fileURLToPath } from 'node:url';
import { imported } from '../scripts/bundle.mjs';

const { make } = await imported('test/support/examples/make.ts');
await make(fileURLToPath(new URL('.', import.meta.url)));
