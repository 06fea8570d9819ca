import { given } from '../../geo/given.ts';
import type { Work } from '../../main/contract/work.ts';
import { work } from '../state/happening.ts';

/** What a piece of long work gets: the signal that ends it, and where it tells how far it is. */
export interface Job {
  readonly signal: AbortSignal;
  tell(work: Work): void;
}

const OVERTAKEN = 'overtaken';
let running: AbortController | undefined;
let begun = 0;

/** How often something has been begun: whoever looks twice knows whether another came between. */
export const workBegun = (): number => begun;

/** Ends what is running without a word: something else takes its place. */
export function overtake(): void {
  running?.abort(OVERTAKEN);
  running = undefined;
  begun++;
  work.value = undefined;
}

/** Whether something else has taken a job's place. */
export const isOvertaken = ({ signal }: Pick<Job, 'signal'>): boolean => signal.reason === OVERTAKEN;

/**
 * Runs one piece of long work and shows it with its way to stop. A later one ends the one before: the latest
 * request wins.
 * @returns whether it was neither stopped nor overtaken
 */
export async function runLong(
  what: string,
  run: (job: Job) => Promise<void>,
): Promise<'done' | 'stopped' | 'overtaken'> {
  running?.abort(OVERTAKEN);
  begun++;
  const stop = new AbortController();
  running = stop;
  const show = (told: Work) => {
    if (running === stop)
      work.value = {
        what: told.what,
        ...given({ share: told.share, secondsLeft: told.secondsLeft }),
        stop: () => stop.abort(),
      };
  };
  show({ what });
  try {
    await run({ signal: stop.signal, tell: show });
  } finally {
    if (running === stop) {
      running = undefined;
      work.value = undefined;
    }
  }
  if (!stop.signal.aborted) return 'done';
  return isOvertaken(stop) ? 'overtaken' : 'stopped';
}
