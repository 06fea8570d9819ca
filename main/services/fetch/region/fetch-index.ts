import { readRegionIndex } from '../../../../geo/fetch/region/read-index.ts';
import type { RegionIndex } from '../../../../geo/fetch/region/region.ts';
import { given } from '../../../../geo/given.ts';
import { fail, ok, type Result } from '../../../../geo/result.ts';
import { messageOf } from '../../files/system-error.ts';
import { askForText } from '../http/ask-for-text.ts';
import { sayPage } from '../http/say-page.ts';
import type { Patience } from '../http/watch.ts';
import { keepIndex } from './kept-index.ts';
import { isPage, refuseOthers, sayStatus } from './server-files.ts';

/** Over ten times what the largest list known has, packed and unpacked. */
const MOST = { packed: 32_000_000, unpacked: 64_000_000 };
const WHAT = 'the list of regions';

export interface IndexAsk {
  /** the list's address */
  readonly server: URL;
  /** where it is kept */
  readonly folder: string;
  readonly patience: Patience;
  readonly nowMs: number;
  readonly signal?: AbortSignal;
  onBytes?(bytes: number): void;
}

/**
 * Asks a server for its list of regions and keeps it. It is the same for everybody: nothing of the drive is told.
 * @returns the list, and sentences on what of it cannot be used or that it could not be kept
 */
export async function fetchIndex(
  ask: IndexAsk,
): Promise<Result<{ readonly index: RegionIndex; readonly notes: readonly string[] }>> {
  const { server, folder, nowMs } = ask;
  const answer = await askForText({
    server,
    packing: 'gzip',
    patience: ask.patience,
    most: MOST,
    ...given({ signal: ask.signal, onBytes: ask.onBytes }),
  });
  if (!answer.ok) return answer;
  const { status, headers, text } = answer.value;
  if (status !== 200) return fail('index-status', sayStatus(server.host, status, WHAT));
  if (isPage(headers['content-type']) && /^\s*</u.test(text))
    return fail('index-page', sayPage(server.host, WHAT));
  const index = readRegionIndex(text, refuseOthers(server));
  if (!index.ok) return index;
  const { refused, refusedCount } = index.value;
  const rest = refusedCount - refused.length;
  const notes = rest > 0 ? [...refused, `So are ${rest} more.`] : [...refused];
  try {
    await keepIndex(folder, server, text, nowMs);
  } catch (error) {
    notes.push(
      `The list of regions could not be kept in ${folder} (${messageOf(error)}); it will be asked for again.`,
    );
  }
  return ok({ index: index.value, notes });
}
