import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    include: ['tests/**/*.test.ts'],
    environment: 'node',
    testTimeout: 30_000,
    passWithNoTests: false,
    // two cores, and each pool worker loads the map readers
    maxWorkers: 2,
  },
});
