import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { defineConfig, type Plugin, transformWithOxc } from 'vite';
import { notices } from './build/notices.ts';
import { FACE_FILES } from './services/hand-over/face-files.ts';

const MAIN = import.meta.dirname;
const ENTRIES = [
  'cli/main',
  'cli/start',
  'cli/check/check-worker',
  'cli/plan/plan-worker',
  'electron/main',
  'services/engine/worker',
  'services/shelf/apart/program',
  'services/shelf/import/worker',
  'services/yard/grid/worker',
];

/** Parts that others may replace stay outside. */
const OUTSIDE = ['electron', 'gpxparser', 'opening_hours'];
/** What ships beside the bundle, by name: with Electron come its own notices. */
const BESIDE = [
  ...['gpxparser', 'opening_hours', 'suncalc'],
  ...FACE_FILES.map(({ package: name }) => `@fontsource/${name}`),
];

/** The script that runs before the page is one plain file, as Electron's sandbox wants it. */
const preload: Plugin = {
  name: 'preload',
  async buildStart() {
    const file = join(MAIN, 'electron/preload.cts');
    const { code } = await transformWithOxc(await readFile(file, 'utf8'), file, { lang: 'ts' });
    this.emitFile({ type: 'asset', fileName: 'electron/preload.cjs', source: code });
  },
};

/** The faces of the pages that are handed over, beside the program that puts them into the pages. */
const faces: Plugin = {
  name: 'faces',
  async buildStart() {
    for (const { files, name } of FACE_FILES.flatMap(({ package: files, regular, bold }) =>
      [regular, bold].map((name) => ({ files, name })),
    )) {
      const source = await readFile(join(MAIN, '../node_modules/@fontsource', files, 'files', name));
      this.emitFile({ type: 'asset', fileName: `faces/${name}`, source });
    }
  },
};

/** What is large and seldom wanted is loaded when it is wanted. */
const whenAsked: Plugin = {
  name: 'when asked',
  enforce: 'pre',
  resolveId: (id, from) =>
    id === 'opening_hours' && from !== undefined ? join(MAIN, 'hours-when-asked.ts') : undefined,
};

const BORDERS = /^var borders_default = (\{[\s\S]*?^\});\s*?$[\s\S]*?^var borders = borders_default;$/m;
const MADE_AT_ONCE = /^loadDerivedDataAndCaches\(borders\);$/m;
/** What is read of what is made, below where it is made. */
const READ = /^function locArray\([\s\S]*/m;

const MADE_WHEN_ASKED = `var bordersMade = false;
function made() {
  if (!bordersMade) loadDerivedDataAndCaches((borders = JSON.parse(bordersText)));
  bordersMade = true;
  return { places: _whichPolygon, codes: _featuresByCode };
}`;

/**
 * The borders of all countries as one text, JSON being read several times as fast as the same written as code; read
 * and indexed when a country is first asked for, which the thread of a window's calls never does.
 */
const bordersWhenAsked: Plugin = {
  name: 'borders when asked',
  transform(code, id) {
    if (!id.endsWith('country-coder.mjs')) return;
    const [whole, literal] = BORDERS.exec(code) ?? [];
    const [read] = READ.exec(code) ?? [];
    if (whole === undefined || read === undefined || !MADE_AT_ONCE.test(code))
      throw new Error('The borders are not where they were in country-coder.');
    const json = JSON.stringify(runInNewContext(`(${literal})`));
    const fromMade = read
      .replace(/\b_whichPolygon\b/g, 'made().places')
      .replace(/\b_featuresByCode\b/g, 'made().codes');
    return {
      code: code
        .replace(read, () => fromMade)
        .replace(MADE_AT_ONCE, () => MADE_WHEN_ASKED)
        .replace(whole, () => `var borders;\nvar bordersText = ${JSON.stringify(json)};`),
    };
  },
};

/** The program in a few files, so that it starts without opening hundreds. */
export default defineConfig({
  root: MAIN,
  plugins: [whenAsked, bordersWhenAsked, preload, faces, notices('notices.txt', BESIDE)],
  ssr: { noExternal: true, external: OUTSIDE },
  build: {
    ssr: true,
    ssrEmitAssets: true,
    outDir: '../.build/program',
    emptyOutDir: true,
    target: 'node20',
    minify: false,
    chunkSizeWarningLimit: 4000,
    rolldownOptions: {
      // how long its own plugins took is no news to who starts the program
      checks: { pluginTimings: false },
      input: Object.fromEntries(ENTRIES.map((name) => [name, join(MAIN, `${name}.ts`)])),
      output: { entryFileNames: '[name].js', chunkFileNames: 'parts/[name]-[hash].js' },
    },
  },
});
