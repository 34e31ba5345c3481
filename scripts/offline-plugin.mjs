// Builds the service worker after everything else, with the list of all files of the bench written into it.
import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { build } from 'rolldown';

const source = fileURLToPath(new URL('../src/bench/offline/service-worker.ts', import.meta.url));

/**
 * @param {readonly string[]} others files beside those that are built: what lies in the public folder
 * @returns {import('vite').Plugin}
 */
export const offline = (others) => ({
  name: 'offline',
  apply: 'build',
  async generateBundle(_options, bundle) {
    const files = ['./', './index.html', ...Object.keys(bundle).map((file) => `./${file}`), ...others];
    const hash = createHash('sha256');
    for (const [name, file] of Object.entries(bundle)) {
      hash.update(name).update(file.type === 'chunk' ? file.code : file.source);
    }
    const made = await build({
      input: source,
      write: false,
      transform: {
        define: {
          FILES: JSON.stringify([...new Set(files)]),
          BUILD: JSON.stringify(hash.digest('hex').slice(0, 12)),
        },
      },
      output: { format: 'iife', minify: true },
    });
    this.emitFile({ type: 'asset', fileName: 'service-worker.js', source: made.output[0].code });
  },
});
