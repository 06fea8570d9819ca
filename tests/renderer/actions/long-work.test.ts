import { describe, expect, it } from 'vitest';
import { type Job, runLong } from '../../../renderer/actions/long-work.ts';
import { work } from '../../../renderer/state/happening.ts';

/** Work that ends when it is stopped. */
const untilStopped = ({ signal }: Job) =>
  new Promise<void>((resolve) => signal.addEventListener('abort', () => resolve(), { once: true }));

describe('long work', () => {
  it('is shown while it runs, with how far it is', async () => {
    const ended = await runLong('Reading', async (job) => {
      expect(work.value).toMatchObject({ what: 'Reading' });
      job.tell({ what: 'Reading the map', share: 0.5 });
      expect(work.value).toMatchObject({ what: 'Reading the map', share: 0.5 });
    });
    expect([ended, work.value]).toEqual(['done', undefined]);
  });

  it('stops when asked', async () => {
    const running = runLong('Reading', untilStopped);
    work.value?.stop();
    expect([await running, work.value]).toEqual(['stopped', undefined]);
  });

  it('gives way to the latest request, which stays shown', async () => {
    const first = runLong('first', untilStopped);
    const second = runLong('second', untilStopped);
    expect(await first).toBe('overtaken');
    expect(work.value?.what).toBe('second');
    work.value?.stop();
    expect(await second).toBe('stopped');
  });
});
