import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    setupFiles: ['test/support/seeded.ts'],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
