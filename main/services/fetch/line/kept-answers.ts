import { createHash } from 'node:crypto';
import { readdir, readFile, stat, unlink, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import { makeFolders } from '../../files/make-folders.ts';
import { sweepPassing } from '../../files/passing-files.ts';
import { replaceFile } from '../../files/replace-file.ts';

const pack = promisify(gzip);
const unpack = promisify(gunzip);

/** As long as an answer that was not used waits for the fetch to be taken up again. */
const KEPT_MS = 7 * 24 * 3600_000;
const NAME = /^(?<key>[0-9a-f]{64})\.json\.gz$/u;
/** What was made of them and never put on the shelf. */
const MERGED = /^along-[0-9a-f]+\.json$/u;

/** Answers that came whole, each in a file of its own, so that what was fetched once is not asked again. */
export interface KeptAnswers {
  has(key: string): boolean;
  /** undefined where there is none, or it cannot be read any more */
  read(key: string): Promise<string | undefined>;
  /** Whole or not at all. @throws what the system says */
  keep(key: string, text: string): Promise<void>;
  drop(keys: Iterable<string>): Promise<void>;
}

/** Names the answer to a question, whatever the server was allowed to spend on it. */
export function keyOf(server: URL, question: string): string {
  return createHash('sha256').update(`${server.href}\n${question}`).digest('hex');
}

/** Opens the folder and throws away what is older than a week. @throws what the system says */
export async function openKeptAnswers(folder: string, now: () => Date): Promise<KeptAnswers> {
  await makeFolders(folder);
  const nowMs = now().getTime();
  await sweepPassing(folder, nowMs);
  const known = new Set<string>();
  const pathOf = (key: string) => join(folder, `${key}.json.gz`);
  for (const name of await readdir(folder)) {
    const key = NAME.exec(name)?.groups?.['key'];
    if (key === undefined && !MERGED.test(name)) continue;
    const path = join(folder, name);
    const { mtimeMs } = await stat(path).catch(() => ({ mtimeMs: Number.NaN }));
    // of tomorrow too: a clock was set, and nobody knows how old it is
    if (!(Math.abs(nowMs - mtimeMs) <= KEPT_MS)) await unlink(path).catch(() => {});
    else if (key !== undefined) known.add(key);
  }
  const drop = async (keys: Iterable<string>) => {
    for (const key of keys) {
      known.delete(key);
      await unlink(pathOf(key)).catch(() => {});
    }
  };
  return {
    has: (key) => known.has(key),
    async read(key) {
      if (!known.has(key)) return undefined;
      try {
        return (await unpack(await readFile(pathOf(key)))).toString('utf8');
      } catch {
        await drop([key]);
        return undefined;
      }
    },
    async keep(key, text) {
      await replaceFile(pathOf(key), await pack(text));
      // by the clock that will be asked how old it is
      await utimes(pathOf(key), now(), now());
      known.add(key);
    },
    drop,
  };
}
