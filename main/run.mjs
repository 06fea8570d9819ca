// Runs a command of the built program, and builds first what has changed since:
// node main/run.mjs start|main WORDS; without a command it only builds
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, stat, writeFile } from 'node:fs/promises';
import module from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const ROOT = join(import.meta.dirname, '..');
const BUILD = join(ROOT, '.build');
const BUILT = join(BUILD, 'built.json');
/** What goes into each bundle, and a file that is there once it is built. */
const BUNDLES = {
  'main/vite.config.ts': { from: ['geo', 'main', 'package-lock.json'], makes: 'program/cli/main.js' },
  'renderer/vite.config.ts': {
    from: ['geo', 'main/contract', 'renderer', 'package-lock.json'],
    makes: 'window/index.html',
  },
};
/** Where tsc puts the commands module by module: whoever starts them there gets the bundle, which starts sooner. */
const MODULES = join(BUILD, 'main/cli');
/** As for the program's own refusals: 1 would mean that something is barred. */
const EXIT_UNUSABLE = 2;

/** Size and time of every file below: equal texts mean that nothing has changed. */
async function stamp(path) {
  const full = join(ROOT, path);
  const there = await stat(full);
  if (!there.isDirectory()) return [`${path} ${there.size} ${there.mtimeMs}`];
  const names = (await readdir(full)).filter((name) => !name.startsWith('.') && name !== 'node_modules');
  return (await Promise.all(names.sort().map((name) => stamp(`${path}/${name}`)))).flat();
}

async function buildChanged() {
  const before = await readFile(BUILT, 'utf8').then(JSON.parse, () => ({}));
  const now = {};
  for (const [config, { from }] of Object.entries(BUNDLES))
    now[config] = (await Promise.all(from.map(stamp))).flat().join('\n');
  const changed = Object.entries(BUNDLES)
    .filter(([config, { makes }]) => now[config] !== before[config] || !existsSync(join(BUILD, makes)))
    .map(([config]) => config);
  if (changed.length === 0) return;
  const { build } = await import('vite');
  await Promise.all(changed.map((config) => build({ configFile: join(ROOT, config), logLevel: 'warn' })));
  await mkdir(BUILD, { recursive: true });
  await writeFile(BUILT, JSON.stringify(now));
}

async function pointToBundle() {
  await mkdir(MODULES, { recursive: true });
  for (const name of ['main', 'start']) {
    const said = `import '../../program/cli/${name}.js';\n`;
    const file = join(MODULES, `${name}.js`);
    if ((await readFile(file, 'utf8').catch(() => '')) !== said) await writeFile(file, said);
  }
}

try {
  await buildChanged();
  await pointToBundle();
} catch (error) {
  console.error(`lanegauge: The program could not be built: ${error.message}`);
  process.exit(EXIT_UNUSABLE);
}
const [, , name, ...words] = process.argv;
if (name !== undefined) {
  // Node 22 and later keep what they compiled
  module.enableCompileCache?.(join(BUILD, 'compiled'));
  const entry = join(BUILD, 'program/cli', `${name}.js`);
  process.argv = [process.argv[0], entry, ...words];
  await import(pathToFileURL(entry).href);
}
