import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    setupFiles: ['test/support/seeded.ts'],
    // Most tests of the bench wait for a browser: a core left free for it would lie idle.
    maxWorkers: '100%',
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
