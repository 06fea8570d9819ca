import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');

/** What lint, set as in this project, says of a project of these files. */
function lint(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'lint-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  for (const name of ['.biome.json', '.ci', '.gitignore'])
    cpSync(join(ROOT, name), join(folder, name), { recursive: true });
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  const program = resolve(ROOT, 'node_modules/@biomejs/biome/bin/biome');
  const { stdout, stderr } = spawnSync(process.execPath, [program, 'lint', '--colors=off', '.'], {
    cwd: folder,
    encoding: 'utf8',
  });
  return stdout + stderr;
}

it('lint keeps long lists out of arguments, where they would overflow the stack', () => {
  const said = lint({
    'geo/a.ts': 'export const a = (b: number[]) => Math.max(1, ...b);\n',
    'main/b.ts': 'export const a = (b: number[]) => Math.min(...b);\n',
    'renderer/c.tsx': 'export const a = (b: number[], c: number[]) => c.push(...b, 1);\n',
    'renderer/d.ts': 'export const a = (b: number[], c: number[][]) => c.push([...b]);\n',
  });
  const refused = [...said.matchAll(/^(\S+):\d+:\d+ plugin/gmu)].map(([, file]) => file);
  expect(refused.sort()).toEqual(['geo/a.ts', 'main/b.ts', 'renderer/c.tsx']);
});
