import type { Region } from '../../../../geo/fetch/region/region.ts';
import { given } from '../../../../geo/given.ts';
import { ok, type Result } from '../../../../geo/result.ts';
import { askServer } from '../http/ask-server.ts';
import type { HttpFault } from '../http/fault.ts';
import { sayPage } from '../http/say-page.ts';
import type { Patience } from '../http/watch.ts';
import { isPage, sayStatus } from './server-files.ts';

/** A map file smaller than this holds nothing. */
const LEAST_BYTES = 20;

export interface SizesAsk {
  readonly server: URL;
  readonly regions: readonly Region[];
  readonly patience: Patience;
  readonly signal?: AbortSignal;
  onAsked?(count: number): void;
}

/** What a server told of its files. */
export interface Sizes {
  /** bytes, by region id */
  readonly told: ReadonlyMap<string, number>;
  /** regions whose size it did not tell, by id */
  readonly untold: ReadonlySet<string>;
  /** regions whose file it has not got, by id */
  readonly gone: ReadonlySet<string>;
  /** a sentence for each of them that is untold or gone */
  readonly notes: readonly string[];
}

/**
 * Asks how large the files of some regions are, one after the other.
 * @returns a fault where the server cannot be reached at all: it is then not asked on
 */
export async function askSizes({ server, regions, ...ask }: SizesAsk): Promise<Result<Sizes, HttpFault>> {
  const told = new Map<string, number>();
  const untold = new Set<string>();
  const gone = new Set<string>();
  const notes: string[] = [];
  for (const [count, { id, name, url }] of regions.entries()) {
    ask.onAsked?.(count);
    const answer = await askServer(
      {
        server,
        url: new URL(url),
        method: 'HEAD',
        packing: 'plain',
        patience: ask.patience,
        most: { packed: 0, unpacked: 0 },
        ...given({ signal: ask.signal }),
      },
      () => undefined,
    );
    if (!answer.ok) return answer;
    const { status, headers } = answer.value;
    const bytes = Number(headers['content-length']);
    const what = `the map of ${name}`;
    if (status === 404 || status === 410) {
      gone.add(id);
      notes.push(sayStatus(server.host, status, what));
    } else if (status !== 200) {
      untold.add(id);
      notes.push(sayStatus(server.host, status, what));
    } else if (isPage(headers['content-type'])) {
      untold.add(id);
      notes.push(sayPage(server.host, what));
    } else if (Number.isSafeInteger(bytes) && bytes >= LEAST_BYTES) told.set(id, bytes);
    else {
      untold.add(id);
      notes.push(`${server.host} does not tell how large ${what} is.`);
    }
  }
  return ok({ told, untold, gone, notes });
}
