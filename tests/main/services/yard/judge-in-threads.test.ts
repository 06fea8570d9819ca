import { Worker } from 'node:worker_threads';
import { describe, expect, it } from 'vitest';
import { judgeInThreads } from '../../../../main/services/yard/grid/judge-in-threads.ts';
import type { FromJudge } from '../../../../main/services/yard/grid/messages.ts';

/** A thread that judges nothing, and ends at the drives so called. */
const THREAD = `
  const { parentPort } = require('node:worker_threads');
  parentPort.on('message', ({ kind, task }) => {
    if (kind !== 'drive') return;
    if (task.drive.startsWith('ends')) process.exit(1);
    parentPort.postMessage({ kind: 'done', drive: task.drive, box: { south: 0, west: 0, north: 1, east: 1 } });
  });
`;
const start = () => new Worker(THREAD, { eval: true, stderr: true });
const task = (drive: string) => ({ drive, file: { path: drive, name: drive }, vehicles: [] });
const SETUP = { shelf: '', notes: [], units: 'metric', made: '2027-06-12T09:30:00Z' } as const;

async function judged(...drives: string[]) {
  const heard: FromJudge[] = [];
  const hooks = { hear: (news: FromJudge) => heard.push(news), signal: new AbortController().signal };
  await judgeInThreads(drives.map(task), SETUP, hooks, start);
  const of = (wanted: FromJudge['kind']) =>
    heard.flatMap((news) => (news.kind === wanted && 'drive' in news ? [news.drive] : [])).sort();
  return { done: of('done'), failed: of('failed'), heard };
}

describe('a thread of the grid that is killed while it checks', () => {
  it('costs the drive it was at, with a sentence, and no other', async () => {
    const { done, failed, heard } = await judged('a', 'ends', 'b', 'c', 'd');
    expect([done, failed]).toEqual([['a', 'b', 'c', 'd'], ['ends']]);
    expect(heard).toContainEqual({
      kind: 'failed',
      drive: 'ends',
      say: expect.stringMatching(/^Checking it was cut off: .* Check it again/),
    });
  });

  it('is not begun anew for ever where every one ends', async () => {
    const all = Array.from({ length: 20 }, (_, i) => `ends ${i}`);
    await expect(judged(...all)).rejects.toThrow('threads of the grid end early');
  });
});
