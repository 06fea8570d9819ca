import { defineConfig } from 'vite';
import { notices } from '../main/build/notices.ts';

/** What is seldom needed is loaded when it is: the rules of every country, the shelf, what fetching would take, writing GPX, handing over. */
const LATER =
  /\/geo\/country\/(?!cited)|\/about-rules\.tsx$|\/renderer\/shelf\/(?:area|changes|choose-file|map-entry|progress|shelf)|\/renderer\/shelf\/fetch\/(?:fetch-dialog|plan-facts|steps)|\/renderer\/yard\/|\/geo\/yard\/|\/renderer\/host\/drive-file|\/renderer\/ways\/(?:no-way|way-item|way-sample|ways-answer|whole-drive)|\/geo\/report\/ways\/(?:say-)?drive-by-ways|\/geo\/export\/track-gpx|\/geo\/drive\/gpx\/(?:gpx-text|gpx-values)|\/renderer\/plan\/(?:find-place|place-field|place-list|place-words|plan-panel|prefer-choice|replan)|\/geo\/units\/read-place|\/renderer\/vehicle\/(?:card-|fleet-list|vehicle-editor|places\/)|\/geo\/vehicle\/form\/|\/renderer\/notes\/(?:draft|keep|note-dialog|notes-dialog|typed-note|notes\.css)|\/geo\/notes\/|\/renderer\/day\/(?!day-part)|\/geo\/(?:day|services)\/|\/renderer\/dialogs\/(?:help|loaded-later|settings-form|servers-field|firm-field)|\/renderer\/handover\/|\/geo\/handover\/|\/renderer\/(?:load|swing)\/|\/renderer\/drive\/figures\/turn-figure|\/geo\/swing\/|\/geo\/load\/(?!weigh)|\/node_modules\/fflate\//;

/** Of that the dialogs and panels that most people open in one sitting: apart each would pack worse. */
const DIALOGS =
  /\/renderer\/(?:shelf|notes|dialogs|plan|ways|handover|day)\/|\/renderer\/vehicle\/(?:card-|fleet-list|vehicle-editor|places\/)/;

/** The two views to scale share most of what they draw with. */
const VIEWS = /\/(?:renderer|geo)\/(?:load|swing)\//;

export default defineConfig({
  root: import.meta.dirname,
  base: '/',
  plugins: [notices('notices.txt')],
  resolve: { alias: [{ find: /^leaflet$/, replacement: 'leaflet/dist/leaflet-src.esm.js' }] },
  build: {
    outDir: '../.build/window',
    emptyOutDir: true,
    target: 'chrome120',
    // the policy allows no inline script and no data: script
    assetsInlineLimit: 0,
    // how long its own plugins took is no news to who starts the program
    rolldownOptions: {
      checks: { pluginTimings: false },
      // one piece at the start; many small ones pack worse
      output: {
        codeSplitting: {
          groups: [
            { name: 'window', test: (id) => !LATER.test(id) },
            { name: 'dialogs', test: DIALOGS },
            { name: 'views', test: VIEWS },
          ],
        },
      },
    },
    chunkSizeWarningLimit: 1000,
    modulePreload: { polyfill: false },
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
