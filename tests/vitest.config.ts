import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    include: ['tests/**/*.test.ts'],
    environment: 'node',
    globalSetup: ['tests/support/get-browser.ts'],
    testTimeout: 30_000,
    passWithNoTests: false,
    // two cores, and each pool worker loads the map readers
    maxWorkers: 2,
  },
});
