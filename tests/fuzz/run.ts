/**
 * Attacks every reader and the contract with made-up and damaged inputs, and tries the properties of the tests from a
 * fresh seed. `npm run fuzz -- SECONDS SEED`; the same seed makes the same inputs in the same order. Prints how many
 * were tried, and keeps each that was not taken as promised in .build/fuzz; `npm run fuzz -- FILE` tries one again.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runProperties } from './properties.ts';
// before the targets: it says where they may write
import { clearScratch } from './scratch.ts';
import { tryAgain, watch } from './watch.ts';
import { type Fault, tryOf } from './worker.ts';

const KEPT = fileURLToPath(new URL('../../fuzz/', import.meta.url));
/** The properties' share of the time, and seconds, at most; what they leave goes to the inputs. */
const PROPERTIES_SHARE = 0.4;
const PROPERTIES_MOST_S = 240;

const [first = '60', second = '1'] = process.argv.slice(2);
if (existsSync(first)) await repeat(first);
else await run(Number(first), Number(second));
clearScratch();
// a port that a thread left open must not keep the program
process.exit();

async function run(seconds: number, seed: number): Promise<void> {
  if (!(seconds > 0) || !Number.isInteger(seed)) {
    console.error(
      'npm run fuzz -- SECONDS SEED: seconds above 0, and a whole number. Or the file of a kept input.',
    );
    process.exitCode = 2;
    return;
  }
  const endMs = performance.now() + seconds * 1000;
  const properties = await runProperties(seed, Math.min(PROPERTIES_MOST_S, seconds * PROPERTIES_SHARE));
  const { counts, faults } = await watch(seed, endMs, (number) => tryOf(seed, number).target.name);
  let tried = 0;
  for (const [name, count] of counts) {
    tried += count;
    const wrong = faults.filter(({ target }) => target === name).length;
    console.log(
      `${name.padEnd(28)} ${String(count).padStart(8)} tried  ${wrong === 0 ? '' : `${wrong} WRONG`}`,
    );
  }
  console.log(`${'all'.padEnd(28)} ${String(tried).padStart(8)} tried in ${seconds} s, seed ${seed}`);
  console.log(properties.say);
  tellFaults(faults);
  if (faults.length > 0 || !properties.ok) process.exitCode = 1;
}

/** One of each kind is told; all are kept. */
function tellFaults(faults: readonly Fault[]): void {
  const told = new Set<string>();
  for (const fault of faults) {
    const path = keep(fault);
    const kind = `${fault.target}: ${fault.what.split(':')[0]}`;
    if (told.has(kind)) continue;
    told.add(kind);
    console.log(`\n${fault.target}: ${fault.what}\n  npm run fuzz -- ${path}`);
  }
}

function keep(fault: Fault): string {
  mkdirSync(KEPT, { recursive: true });
  const path = join(KEPT, `${fault.target.replaceAll(' ', '-')}-${fault.seed}-${fault.number}.json`);
  // what hung could not hand its input over: it is made again
  const input = fault.input || Buffer.from(tryOf(fault.seed, fault.number).make()).toString('base64');
  writeFileSync(path, `${JSON.stringify({ ...fault, input }, null, 2)}\n`);
  return path;
}

async function repeat(path: string): Promise<void> {
  const { target, input } = JSON.parse(readFileSync(path, 'utf8')) as Fault;
  const what = await tryAgain(target, Uint8Array.from(Buffer.from(input, 'base64')));
  console.log(`${target}: ${what ?? 'taken as promised'}`);
  if (what !== undefined) process.exitCode = 1;
}
