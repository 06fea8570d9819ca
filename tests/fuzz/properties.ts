import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
/** Properties of what reaches a browser or a thread are left to `npm test`. */
const FOLDERS = ['tests/geo', 'tests/main', 'tests/renderer', 'tests/outside'];

/**
 * Runs the tests with a property from this seed, in an order of the seed's own: what the time does not suffice for is
 * told, and comes first at another seed.
 */
export function runProperties(
  seed: number,
  seconds: number,
): Promise<{ readonly ok: boolean; readonly say: string }> {
  const files = FOLDERS.flatMap(testsIn).filter((path) =>
    readFileSync(join(ROOT, path), 'utf8').includes("'fast-check'"),
  );
  const vitest = spawn(
    process.execPath,
    [
      'node_modules/vitest/vitest.mjs',
      'run',
      '--config',
      'tests/vitest.config.ts',
      '--no-color',
      '--maxWorkers=1',
      '--sequence.shuffle.files',
      `--sequence.seed=${seed}`,
      ...files,
    ],
    { cwd: ROOT, env: { ...process.env, LANEGAUGE_SEED: String(seed) }, stdio: ['ignore', 'pipe', 'pipe'] },
  );
  let said = '';
  for (const stream of [vitest.stdout, vitest.stderr])
    stream.on('data', (data: Buffer) => {
      said += data.toString();
    });
  return new Promise((resolve) => {
    let late = false;
    const timer = setTimeout(() => {
      late = true;
      vitest.kill();
    }, seconds * 1000);
    vitest.on('close', (code) => {
      clearTimeout(timer);
      const failed = said.split('\n').filter((line) => /FAIL|seed:|Counterexample|\d failed/.test(line));
      const through = late ? new Set(said.match(/(?<=[✓❯] .*)tests\/\S+\.test\.ts/gu)).size : files.length;
      const ok = late ? failed.length === 0 : code === 0;
      const which = `properties of ${through} of ${files.length} test files from seed ${seed}`;
      resolve({ ok, say: `${which}: ${ok ? 'all hold' : failed.join('\n')}` });
    });
  });
}

function testsIn(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join(folder, name));
}
