import type { LineAnswer } from './read-answer.ts';

/** What the merged map says of itself. */
export interface MergedFacts {
  /** ISO date of the oldest of its parts */
  readonly baseDate?: string;
  /** what it lacks, in one sentence, so that nobody takes it for whole; none where it is */
  readonly remark?: string;
}

/**
 * Several answers as one map in the form of one answer, which our reader takes, piece by piece so that no more than
 * one answer need be held. What several of them hold stands in it once.
 * @param answers the newest first: of two that differ the first is right
 */
export function* mergeAnswers(answers: Iterable<LineAnswer>, facts: MergedFacts): Iterable<string> {
  const seen = new Set<string>();
  yield `{"version":0.6,"generator":"Lanegauge","osm3s":${JSON.stringify({
    ...(facts.baseDate === undefined ? {} : { timestamp_osm_base: facts.baseDate }),
    copyright: '© OpenStreetMap contributors, Open Database License 1.0',
  })},"elements":[`;
  let first = true;
  for (const { elements } of answers) {
    const texts: string[] = [];
    for (const element of elements) {
      const key = `${element.type[0]}${element.id}`;
      if (seen.has(key)) continue;
      seen.add(key);
      texts.push(JSON.stringify(element));
    }
    if (texts.length > 0) yield `${first ? '\n' : ',\n'}${texts.join(',\n')}`;
    first &&= texts.length === 0;
  }
  yield `\n]${facts.remark === undefined ? '' : `,"remark":${JSON.stringify(facts.remark)}`}}\n`;
}

/** The oldest of the dates; undefined where one is missing: what nobody dated may be older than all. */
export function oldestDate(answers: readonly Pick<LineAnswer, 'baseDate'>[]): string | undefined {
  const dates = answers.map(({ baseDate }) => baseDate);
  return dates.includes(undefined) ? undefined : dates.toSorted()[0];
}
