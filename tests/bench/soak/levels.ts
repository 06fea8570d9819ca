import { readdirSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import type { CDPSession } from 'playwright-core';

/** What must not rise while the program is left open, by name; counts, or megabytes. */
export type Levels = Readonly<Record<string, number>>;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** Of this process, its threads' memory in `program RSS`; after two collections, so that nothing is counted that is garbage. */
export async function programLevels(): Promise<Levels> {
  for (let times = 0; times < 2; times++) {
    collect();
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  const { rss, heapUsed, external, arrayBuffers } = process.memoryUsage();
  const resources = process.getActiveResourcesInfo();
  return {
    'program heap': megabytes(heapUsed),
    'program outside heap': megabytes(external + arrayBuffers),
    'program RSS': megabytes(rss),
    handles: resources.length,
    timers: resources.filter((name) => name === 'Timeout' || name === 'Immediate').length,
    threads: countIn('/proc/self/task'),
    'open files': countIn('/proc/self/fd'),
  };
}

/** Of the page, by the browser's own count. */
export async function pageLevels(page: CDPSession): Promise<Levels> {
  await page.send('HeapProfiler.collectGarbage');
  await page.send('HeapProfiler.collectGarbage');
  const { metrics } = await page.send('Performance.getMetrics');
  const told = new Map(metrics.map(({ name, value }) => [name, value]));
  return {
    'page heap': megabytes(told.get('JSHeapUsedSize') ?? Number.NaN),
    nodes: told.get('Nodes') ?? Number.NaN,
    listeners: told.get('JSEventListeners') ?? Number.NaN,
    documents: told.get('Documents') ?? Number.NaN,
  };
}

function megabytes(bytes: number): number {
  return Math.round(bytes / 1e5) / 10;
}

/** 0 where the system has no such folder. */
function countIn(folder: string): number {
  try {
    return readdirSync(folder).length;
  } catch {
    return 0;
  }
}

/** Each level early and late, as means of a fifth of the rounds; the first fifth warms up. */
export function riseOf(rounds: readonly Levels[]): { name: string; early: number; late: number }[] {
  const fifth = Math.max(1, Math.floor(rounds.length / 5));
  const mean = (part: readonly Levels[], name: string) =>
    part.reduce((sum, levels) => sum + (levels[name] ?? 0), 0) / part.length;
  return Object.keys(rounds[0] ?? {}).map((name) => ({
    name,
    early: mean(rounds.slice(fifth, 2 * fifth), name),
    late: mean(rounds.slice(-fifth), name),
  }));
}
