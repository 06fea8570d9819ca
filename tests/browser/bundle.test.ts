import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';

const ASSETS = resolve(import.meta.dirname, '../../.build/window/assets');
const BUDGET_BYTES = 200_000;

it("the window's scripts and styles stay under 200 kB as sent compressed", () => {
  const sizes = readdirSync(ASSETS)
    .filter((name) => /\.(js|css)$/.test(name))
    .map((name) => ({ name, bytes: gzipSync(readFileSync(join(ASSETS, name))).length }));
  const total = sizes.reduce((sum, { bytes }) => sum + bytes, 0);
  expect(total, JSON.stringify(sizes)).toBeLessThan(BUDGET_BYTES);
  expect(total).toBeGreaterThan(5_000);
});
