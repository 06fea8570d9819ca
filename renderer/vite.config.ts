import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  base: '/',
  build: {
    outDir: '../.build/window',
    emptyOutDir: true,
    target: 'chrome120',
    // the policy allows no inline script and no data: script
    assetsInlineLimit: 0,
    // how long its own plugins took is no news to who starts the program
    rolldownOptions: { checks: { pluginTimings: false } },
    chunkSizeWarningLimit: 1000,
    modulePreload: { polyfill: false },
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
