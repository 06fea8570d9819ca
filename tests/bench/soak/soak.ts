import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { createDispatch } from '../../../main/dispatch.ts';
import { type BehindWindow, serveWindowHere, windowParts } from '../../support/served-window.ts';
import { tellRow } from '../table.ts';
import { CHROMIUM } from '../with-window.ts';
import { type Levels, programLevels, riseOf } from './levels.ts';
import { A_PAGE_ROUND } from './page-round.ts';
import { A_ROUND, programRound } from './program-round.ts';

/**
 * An hour that stands for a week with the program left open: `node .build/tests/bench/soak/soak.js ROUNDS MINUTES`, 25
 * rounds being 5,000 checks and 500 drives opened, the shelf replaced each round, while a page in a real browser opens
 * drives, pans, plays lessons. After each round garbage is collected and what must not rise is read; reference: the
 * same levels in the second fifth of the rounds. Ends early after so many minutes.
 */
const ROUNDS = Number(process.argv[2] ?? 25);
const MINUTES = Number(process.argv[3] ?? 60);
/** What may differ from round to round without rising. */
const FLAT_SHARE = 0.1;

async function soak(): Promise<void> {
  const parts = await windowParts();
  let behind: BehindWindow | undefined;
  const served = await serveWindowHere(parts, async (opened) => {
    behind = {
      ...opened,
      dispatch: createDispatch(opened.backend.services, (error) => console.error(error)),
    };
    return opened.dispatch;
  });
  if (!behind) throw new Error('the window was served without a program behind it');
  const page = fork(join(import.meta.dirname, 'page-driver.js'), [served.address]);
  const gone = once(page, 'exit').then(() => {
    throw new Error('the browser is gone');
  });
  try {
    await Promise.race([gone, rounds(behind, page)]);
  } finally {
    page.disconnect();
    await served.close();
    await parts.engine.close();
  }
}

async function rounds(behind: BehindWindow, page: ChildProcess): Promise<void> {
  const read: Levels[] = [];
  const began = performance.now();
  await answerOf(page);
  for (let round = 1; round <= ROUNDS && performance.now() - began < MINUTES * 60_000; round++) {
    await programRound(behind, round);
    page.send(round);
    const levels = { ...(await answerOf(page)), ...(await programLevels()) };
    read.push(levels);
    console.log(`${round}: ${JSON.stringify(levels)}`);
  }
  tell(read, (performance.now() - began) / 60_000);
}

/** The next message of the page: its levels after a round. */
async function answerOf(page: ChildProcess): Promise<Levels> {
  const answer = await new Promise<unknown>((resolve) => page.once('message', resolve));
  return z.record(z.string(), z.number()).parse(answer);
}

function tell(read: readonly Levels[], minutes: number): void {
  const rises = riseOf(read);
  for (const { name, early, late } of rises)
    console.log(`${name.padEnd(22)} ${early.toFixed(1).padStart(9)} then ${late.toFixed(1).padStart(9)}`);
  const risen = rises.filter(({ early, late }) => late > early * (1 + FLAT_SHARE) + 1);
  const done = `${read.length * (A_ROUND.drives + A_PAGE_ROUND.drives)} drives opened, ${read.length * (A_ROUND.checks + A_PAGE_ROUND.checks)} checks, ${read.length} maps replaced`;
  tellRow({
    work: `left open: ${done}, in ${minutes.toFixed(0)} minutes`,
    must: 'memory, handles, timers flat within 10 %',
    aim: '',
    measured: risen.length === 0 ? 'flat' : `risen: ${risen.map(({ name }) => name).join(', ')}`,
    reference: rises
      .map(({ name, early, late }) => `${name} ${early.toFixed(1)} → ${late.toFixed(1)}`)
      .join(', '),
  });
  if (risen.length > 0) process.exitCode = 1;
}

if (existsSync(CHROMIUM)) await soak();
else console.log(`soak: not run, there is no browser at ${CHROMIUM}`);
