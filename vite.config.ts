import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The bench: static files that any web space can host, from whatever folder of it. */
export default defineConfig({
  root: at('src/bench'),
  base: './',
  plugins: [react()],
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
