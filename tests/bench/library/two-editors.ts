/**
 * Two programs change one library at the same time, each killed with SIGKILL at random moments and started anew, until
 * 20,000 changes were told to be kept. Every one of them must be there, as a newest version or before one. How many,
 * and the seed, may be named: `two-editors.js 20000 1`.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { killEditors } from '../../support/library/kill-editors.ts';
import { seeded } from '../../support/random-drives.ts';
import { tellRow } from '../table.ts';

const [changes = 20_000, seed = 1] = process.argv.slice(2).map(Number);
const home = mkdtempSync(join(tmpdir(), 'two-editors-'));
const began = performance.now();
const { kept, kills, twice, wrong } = await killEditors(home, {
  changes,
  livesMs: 4000,
  random: seeded(seed),
});
const seconds = (performance.now() - began) / 1000;
rmSync(home, { recursive: true });
console.log(
  `${kept} changes kept in ${seconds.toFixed(0)} s, ${kills} kills, ${twice} notes of two versions`,
);
for (const each of wrong) console.log(`  ${each}`);
if (wrong.length > 0) process.exitCode = 1;
tellRow({
  work: `a library changed ${kept} times by two programs, killed ${kills} times`,
  must: 'every change told is there',
  aim: '',
  measured: `${wrong.length} missing or wrong`,
  reference: `${twice} of 40 notes in several versions, shown`,
});
