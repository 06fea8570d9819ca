import { PUBLIC_SERVERS } from '../../../contract/server-address.ts';
import type { Asked } from '../asked-today.ts';

/** How a server is asked, so that one which serves everybody goes on doing so. */

/** Between two questions. */
export const PAUSE_MS = 1_000;
/** After each refusal in a row, longer and longer: operators ask for half a minute at least. */
export const WAITS_MS = [30_000, 60_000, 120_000] as const;
/** One refusal more than there are waits, and it is given up. */
export const MOST_TRIES = WAITS_MS.length + 1;
/** So long without any answer, its own waits and ours counted, and it is given up. */
export const MOST_VAIN_MS = 10 * 60_000;
/** A server that wants to be left alone for longer is left alone. */
export const LONGEST_WAIT_MS = 10 * 60_000;

/** What the public server grants a user in a day, by its manual. */
const MOST_A_DAY: Asked = { questions: 10_000, bytes: 1_000_000_000 };

/** Whether a server is the public one, which many share. */
export function isShared(server: URL): boolean {
  return server.host === new URL(PUBLIC_SERVERS.line).host;
}

/** Whether a shared server has been asked as much today as one user may ask. */
export function isEnough(server: URL, asked: Asked): boolean {
  return isShared(server) && (asked.questions >= MOST_A_DAY.questions || asked.bytes >= MOST_A_DAY.bytes);
}
