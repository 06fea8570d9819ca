import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
/** Properties of what reaches a browser or a thread are left to `npm test`. */
const FOLDERS = ['tests/geo', 'tests/main', 'tests/renderer', 'tests/outside'];

/** Runs every test with a property from this seed. What does not end within the time is left, and told. */
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
      if (late)
        return resolve({
          ok: true,
          say: `properties of ${files.length} test files: not through in ${seconds.toFixed(0)} s`,
        });
      const failed = said.split('\n').filter((line) => /FAIL|seed:|Counterexample/.test(line));
      const say = `properties of ${files.length} test files from seed ${seed}: ${code === 0 ? 'all hold' : failed.join('\n')}`;
      resolve({ ok: code === 0, say });
    });
  });
}

function testsIn(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => join(folder, name));
}
