import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

const PURE = ['tests/{geo,outside,renderer,sample-routes}/**/*.test.ts'];
/** These put a fake in the place of Electron, before anything else is loaded. */
const FAKED = ['tests/main/{contract,electron,loopback}/**/*.test.ts'];

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
      // these share what they load: a module has no state that a test could leave behind
      { extends: true, test: { name: 'pure', include: PURE, isolate: false } },
      {
        extends: true,
        test: {
          name: 'program',
          include: ['tests/**/*.test.ts'],
          exclude: [...PURE, ...FAKED],
          isolate: false,
        },
      },
      { extends: true, test: { name: 'faked', include: FAKED } },
    ],
  },
});
