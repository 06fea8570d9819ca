import { readStatus } from '../../../../geo/fetch/line/read-status.ts';
import { given } from '../../../../geo/given.ts';
import { askForText } from '../http/ask-for-text.ts';
import { LONGEST_WAIT_MS, WAITS_MS } from './manners.ts';

/** What a wait is reckoned from. */
export interface Refusal {
  readonly of: 'place' | 'server';
  /** how many refusals in a row, this one counted */
  readonly inARow: number;
  /** what the server asks for */
  readonly leastMs?: number;
  /** what its status page says */
  readonly statusS?: number;
}

/** How long to wait before asking again, milliseconds; undefined: not again. */
export function waitMs({ of, inARow, leastMs = 0, statusS }: Refusal): number | undefined {
  const longer = WAITS_MS[inARow - 1];
  if (longer === undefined) return undefined;
  if (of === 'server') return notTooLong(Math.max(longer, leastMs));
  // for want of a place only the server knows how long; one that tells too little is not believed twice
  const told = statusS === undefined ? leastMs : Math.max((statusS + 1) * 1000, leastMs);
  return notTooLong(told > 0 && inARow === 1 ? told : Math.max(longer, told));
}

function notTooLong(ms: number): number | undefined {
  return ms > LONGEST_WAIT_MS ? undefined : ms;
}

/** Seconds until the server would take another question, by its status page; undefined where it does not say. */
export async function askStatus(server: URL, signal?: AbortSignal): Promise<number | undefined> {
  if (!server.pathname.endsWith('/interpreter')) return undefined;
  const url = new URL(server.href.replace(/interpreter(\?.*)?$/u, 'status'));
  const asked = await askForText({
    server,
    url,
    packing: 'gzip',
    patience: { connectMs: 10_000, silenceMs: 10_000, totalMs: 15_000 },
    most: { packed: 100_000, unpacked: 100_000 },
    ...given({ signal }),
  });
  return asked.ok && asked.value.status === 200 ? readStatus(asked.value.text).waitS : undefined;
}
