import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';

const BUILT = resolve(import.meta.dirname, '../../.build/window');
const BUDGET_BYTES = 170_000;
/** With what only a dialog, a plan or the yard loads, when it is first looked at. */
const WHOLE_BYTES = 275_000;

it("the window's scripts and styles stay under 170 kB as sent compressed", () => {
  const page = readFileSync(join(BUILT, 'index.html'), 'utf8');
  const sizes = readdirSync(join(BUILT, 'assets'))
    .filter((name) => /\.(js|css)$/.test(name))
    .map((name) => ({ name, bytes: gzipSync(readFileSync(join(BUILT, 'assets', name))).length }));
  const sum = (of: typeof sizes) => of.reduce((total, { bytes }) => total + bytes, 0);
  // a worker is begun with the window though the page does not name it
  const atStart = sizes.filter(({ name }) => page.includes(name) || name.startsWith('worker'));
  expect(sum(atStart), JSON.stringify(sizes)).toBeLessThan(BUDGET_BYTES);
  expect(sum(sizes), JSON.stringify(sizes)).toBeLessThan(WHOLE_BYTES);
  expect(atStart.length).toBeGreaterThan(2);
  expect(sum(atStart)).toBeGreaterThan(5_000);
});
