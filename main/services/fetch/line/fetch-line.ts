import { unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { AnswerMerger, oldestDate } from '../../../../geo/fetch/line/merge-answers.ts';
import type { Span } from '../../../../geo/fetch/line/piece.ts';
import { readAnswer } from '../../../../geo/fetch/line/read-answer.ts';
import { joinSpans } from '../../../../geo/fetch/line/spans.ts';
import { given } from '../../../../geo/given.ts';
import { fail, ok, type Problem, type Result } from '../../../../geo/result.ts';
import { replaceFile } from '../../files/replace-file.ts';
import { messageOf } from '../../files/system-error.ts';
import type { KeptAnswers } from './kept-answers.ts';
import { type Had, LineRun, type RunOutcome, type RunProgress } from './line-run.ts';
import type { LineFetchPlan } from './plan-line-fetch.ts';
import { sayAge, sayAreas, sayLacking } from './say-line-fetch.ts';

/** A map fetched along a drive, ready to be put on the shelf. */
export interface LineFetched {
  /** one file in the form of an Overpass answer */
  readonly path: string;
  /** ISO date of the oldest of its parts; undefined where a part is not dated */
  readonly baseDate?: string;
  /** parts of the drive without a map, in driving order; metres as drawn */
  readonly notHad: readonly Span[];
  /** whether the areas that hold the drive are in it */
  readonly areasTold: boolean;
  readonly countries: readonly string[];
  /** what the server said last, where it was given up before all was asked: another fetch goes on from there */
  readonly gaveUp?: Problem;
  /** sentences: what it lacks, how old it is, what it never holds */
  readonly notes: readonly string[];
  /** Throws away the file and the answers it was made of, once it has been put on the shelf. */
  forget(): Promise<void>;
}

export interface LineFetchHooks {
  readonly signal?: AbortSignal;
  onProgress?(progress: RunProgress): void;
}

/** What our reader takes of one file. */
const MOST_CHARACTERS = 190_000_000;

/**
 * Fetches what was planned and agreed to, one question after the other, and makes one map of the answers. Ended at any
 * moment, it goes on from there the next time.
 */
export async function fetchLine(
  plan: LineFetchPlan,
  hooks: LineFetchHooks = {},
): Promise<Result<LineFetched>> {
  const { server, folder, jobs, keptAnswers: kept, asked, pace, limits, id } = plan.prepared;
  const tools = { server, folder, kept, asked, pace, ...given({ signal: hooks.signal }) };
  const run = new LineRun(jobs, { ...tools, onProgress: (progress) => hooks.onProgress?.(progress) });
  const outcome = await run.run();
  if (!outcome.ok) return outcome;
  const { had, notHad, areasTold, countries, gaveUp } = outcome.value;
  const lacking = sayLacking(server.host, outcome.value);
  const path = join(folder, 'line', `along-${id}.json`);
  const written = await writeMerged(path, { outcome: outcome.value, kept, lacking });
  if (!written.ok) return written;
  const dates = had.map(({ baseDate }) => baseDate);
  const baseDate = oldestDate(dates);
  return ok({
    path,
    notHad: joinSpans(notHad),
    areasTold,
    countries,
    ...given({ baseDate, gaveUp }),
    notes: [
      ...lacking,
      ...sayAreas(server.host, outcome.value),
      ...sayAge(server.host, dates, pace.now()),
      ...limits,
    ],
    async forget() {
      await unlink(path).catch(() => {});
      await kept.drop(had.map(({ key }) => key));
    },
  });
}

async function writeMerged(
  path: string,
  parts: { readonly outcome: RunOutcome; readonly kept: KeptAnswers; readonly lacking: readonly string[] },
): Promise<Result<void>> {
  try {
    await replaceFile(path, mergedText(parts));
    return ok(undefined);
  } catch (error) {
    if (error instanceof TooLarge)
      return fail(
        'line.too-large',
        'The map along this drive is larger than one file of this kind may be. Fetch the map by region instead.',
      );
    return fail(
      'line.not-kept',
      `The fetched map cannot be written to ${path} (${messageOf(error)}). Make room there, then fetch again: what is there already is not asked for again.`,
    );
  }
}

class TooLarge extends Error {}

async function* mergedText({
  outcome,
  kept,
  lacking,
}: {
  readonly outcome: RunOutcome;
  readonly kept: KeptAnswers;
  readonly lacking: readonly string[];
}): AsyncIterable<string> {
  const merger = new AnswerMerger();
  let characters = 0;
  yield merger.begin(oldestDate(outcome.had.map(({ baseDate }) => baseDate)));
  for (const { key } of newestFirst(outcome.had)) {
    const text = await kept.read(key);
    const reading = text === undefined ? undefined : readAnswer(text);
    if (reading?.kind !== 'answer') throw new Error('an answer that was kept is gone; fetch again');
    const more = merger.add(reading.answer);
    characters += more.length;
    if (characters > MOST_CHARACTERS) throw new TooLarge();
    yield more;
  }
  yield merger.end(lacking.length > 0 ? lacking.join(' ') : undefined);
}

/** What nobody dated comes last; what is as old in an order that is always the same. */
function newestFirst(had: readonly Had[]): Had[] {
  const order = ({ baseDate = '', key }: Had) => `${baseDate} ${key}`;
  return had.toSorted((a, b) => (order(a) < order(b) ? 1 : -1));
}
