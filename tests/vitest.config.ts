import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

const PURE = ['tests/{geo,outside,renderer,sample-routes}/**/*.test.ts'];

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    environment: 'node',
    setupFiles: ['tests/support/fixed-seed.ts'],
    globalSetup: ['tests/support/get-browser.ts'],
    // long enough on a busy machine: it only ends what hangs
    testTimeout: 120_000,
    hookTimeout: 60_000,
    passWithNoTests: false,
    // two cores, and each pool worker loads the map readers
    maxWorkers: 2,
    projects: [
      // these share what they load: nothing in geo or the window's words has a state that a test could leave behind
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      { extends: true, test: { name: 'program', include: ['tests/**/*.test.ts'], exclude: PURE } },
    ],
  },
});
