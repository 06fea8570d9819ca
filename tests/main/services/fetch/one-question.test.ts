import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { getEventListeners } from 'node:events';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { askAlone } from '../../../../main/services/fetch/one-question.ts';
import { REAL_PACE } from '../../../../main/services/fetch/pace.ts';
import { fastPace } from '../../../support/map-server/fast-pace.ts';
import { dataFolder } from './line/support.ts';

/** The mark that a program of this computer leaves. */
function markOf(pid: number | undefined): string {
  const computer = createHash('sha256').update(hostname()).digest('hex').slice(0, 8);
  return `${computer}-${pid} 00000000-0000-4000-8000-000000000000`;
}

function markedFolder(pid: number | undefined): string {
  const folder = join(dataFolder(), 'fetch');
  mkdirSync(folder);
  writeFileSync(join(folder, 'asking'), markOf(pid));
  return folder;
}

describe('only one question is asked at a time', () => {
  it('within a program, in the order they came', async () => {
    const folder = dataFolder();
    const pace = fastPace();
    const log: string[] = [];
    const ask = (name: string) =>
      askAlone({ folder, pace }, async () => {
        log.push(`${name} begins`);
        await new Promise((resolve) => setTimeout(resolve, 5));
        log.push(`${name} ends`);
        return name;
      });
    expect(await Promise.all([ask('a'), ask('b')])).toEqual(['a', 'b']);
    expect(log).toEqual(['a begins', 'a ends', 'b begins', 'b ends']);
    expect(existsSync(join(folder, 'asking'))).toBe(false);
  });

  it('and leaves nobody behind who listens for a cancel', async () => {
    const { signal } = new AbortController();
    for (let i = 0; i < 3; i++)
      await askAlone({ folder: dataFolder(), pace: fastPace(), signal }, async () => i);
    expect(getEventListeners(signal, 'abort')).toEqual([]);
  });

  it('and one that fails holds up nobody', async () => {
    const folder = dataFolder();
    const pace = fastPace();
    const fails = askAlone({ folder, pace }, () => Promise.reject(new Error('broken')));
    await expect(fails).rejects.toThrow('broken');
    expect(await askAlone({ folder, pace }, async () => 1)).toBe(1);
  });

  it('and another program that asks is waited for', async () => {
    const other = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60000)']);
    onTestFinished(() => void other.kill());
    const folder = markedFolder(other.pid);
    const pace = fastPace();
    let waited = 0;
    pace.onSleep = () => {
      expect(readFileSync(join(folder, 'asking'), 'utf8')).toBe(markOf(other.pid));
      if (++waited === 3) writeFileSync(join(folder, 'asking'), markOf(undefined));
      if (waited === 3) other.kill();
    };
    // whoever is given up while it waits is answered
    const cancel = new AbortController();
    const impatient = askAlone(
      { folder, pace: { ...pace, sleep: async () => cancel.abort() }, signal: cancel.signal },
      async () => 1,
    );
    expect(await impatient).toBeUndefined();
    const asked = askAlone({ folder, pace: { ...pace, sleep: pace.sleep } }, async () => 2);
    await expect(
      Promise.race([asked, new Promise((resolve) => setTimeout(() => resolve('late'), 5000))]),
    ).resolves.toBe(2);
    expect(waited).toBe(3);
  });

  it('and one that was killed while it asked is not', async () => {
    const { pid } = spawnSync(process.execPath, ['-e', '']);
    const folder = markedFolder(pid);
    expect(await askAlone({ folder, pace: fastPace() }, async () => 3)).toBe(3);
  });
});

it('a wait ends when it is given up', async () => {
  const cancel = new AbortController();
  const wait = REAL_PACE.sleep(60_000, cancel.signal);
  cancel.abort();
  await wait;
  await REAL_PACE.sleep(60_000, cancel.signal);
  await REAL_PACE.sleep(1);
});
