import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { offline } from './scripts/offline-plugin.mjs';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const others = readdirSync(at('src/bench/public')).map((file) => `./${file}`);

/** The bench: static files that any web space can host, from whatever folder of it. */
export default defineConfig({
  root: at('src/bench'),
  base: './',
  plugins: [react(), offline(others)],
  worker: { format: 'es' },
  build: {
    outDir: at('dist/bench'),
    emptyOutDir: true,
    target: 'es2023',
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2000,
  },
});
