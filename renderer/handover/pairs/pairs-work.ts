import { signal } from '@preact/signals';
import type { PairNews } from '../../../main/contract/hand-over/hand-over-calls.ts';
import { ask } from '../../host/ask.ts';
import type { NamedPair } from '../../state/sheet-wanted.ts';

/** What became of a pair: that it is being made is said apart. */
export type PairSaid = Exclude<PairNews, { kind: 'doing' }>;
type Told = ReadonlyMap<string, PairSaid>;

/** By `keyOf`; what is absent was not handed over yet. */
export const pairsTold = signal<Told>(new Map());

/** What is being made, while anything is. */
export const pairDoing = signal<{ readonly key: string; readonly what: string } | undefined>(undefined);

export const keyOf = ({ drive, vehicle }: Pick<NamedPair, 'drive' | 'vehicle'>) => `${drive} ${vehicle}`;

/**
 * Hands over pairs, one after the other; what comes of each is told as it is done.
 * @param evenBarred the user has said so of these
 * @returns a sentence where the work itself ended early
 */
export async function handOverAll(
  pairs: readonly NamedPair[],
  evenBarred: boolean,
  stop: AbortSignal,
): Promise<string | undefined> {
  const wanted = pairs.map(({ drive, vehicle }) => ({ drive, vehicle }));
  forget(wanted.map(keyOf));
  pairDoing.value = { key: '', what: 'Checking anew' };
  const reply = await ask(
    'handOverPairs',
    { pairs: wanted, evenBarred },
    {
      signal: stop,
      onProgress(news) {
        const key = keyOf(news);
        if (news.kind === 'doing') pairDoing.value = { key, what: news.what };
        else pairsTold.value = new Map([...pairsTold.peek(), [key, news]]);
      },
    },
  );
  pairDoing.value = undefined;
  return reply.ok || reply.error.code === 'cancelled' ? undefined : reply.error.message;
}

function forget(keys: readonly string[]): void {
  const left = new Map(pairsTold.peek());
  for (const key of keys) left.delete(key);
  pairsTold.value = left;
}
