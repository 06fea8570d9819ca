import { joinSpans, lengthOfSpans } from '../../../../geo/fetch/line/spans.ts';
import { counted, listed } from '../../../../geo/units/text.ts';
import type { NotHad, RunOutcome } from './line-run.ts';
import { MOST_TRIES, MOST_VAIN_MS } from './manners.ts';

/** Older than this is told: public servers are minutes behind, and one that is not keeps an old map. */
const STALE_DAYS = 7;
const DAY_MS = 24 * 3600_000;

const WHY: Readonly<Record<NotHad['why'], string>> = {
  'no road': 'its answer holds no road there',
  'too much': 'it gave up on each try',
  'given up': 'it did not answer any more',
};

/** That the areas that hold the drive are not in the map, where they are not: the roads are, so it is whole but for these. */
export function sayAreas(host: string, { areasTold }: RunOutcome): string[] {
  if (areasTold) return [];
  return [
    `Zones not asked: ${host} does not tell which areas hold a place, so a low-emission zone or a wood whose edge stays away from the drive may be missing.`,
  ];
}

/** What of the roads the fetched map lacks, in sentences; none where it is whole. */
export function sayLacking(host: string, outcome: RunOutcome): string[] {
  const { notHad, gaveUp, had } = outcome;
  const lacking: string[] = [];
  const spans = joinSpans(notHad);
  if (spans.length > 0) {
    const reasons = listed([...new Set(notHad.map(({ why }) => WHY[why]))]);
    const where = listed(spans.slice(0, 5).map(({ fromM, toM }) => `${km(fromM)} to ${km(toM)}`));
    lacking.push(
      `${km(lengthOfSpans(spans))} km of the drive could not be had from ${host} (${reasons}): at km ${where}${spans.length > 5 ? ' and elsewhere' : ''}.`,
    );
  }
  if (gaveUp) lacking.push(gaveUp.message);
  const unfit = had.reduce((sum, one) => sum + one.unfit, 0);
  if (unfit > 0) lacking.push(`${unfit} of the things that ${host} sent cannot be read and were left out.`);
  return lacking;
}

/** How old the fetched map is, where that is worth telling. */
export function sayAge(host: string, dates: readonly (string | undefined)[], now: Date): string[] {
  const known = dates.filter((date) => date !== undefined).sort();
  const [oldest] = known;
  const newest = known.at(-1);
  const said: string[] = [];
  if (known.length < dates.length)
    said.push(
      `${host} does not tell how old ${oldest === undefined ? 'its map is' : 'a part of its map is'}.`,
    );
  if (oldest === undefined || newest === undefined) return said;
  const days = Math.floor((now.getTime() - Date.parse(oldest)) / DAY_MS);
  if (days > STALE_DAYS) said.push(`The map of ${host} is ${inDays(days)} old (${oldest.slice(0, 10)}).`);
  if (Date.parse(newest) - Date.parse(oldest) > DAY_MS)
    said.push(
      `Its answers are of different days, from ${oldest.slice(0, 10)} to ${newest.slice(0, 10)}; the oldest counts.`,
    );
  return said;
}

/** Of days that nobody counts in days any more, the years. */
function inDays(days: number): string {
  return days < 730 ? counted(days, 'day') : `${Math.floor(days / 365.25)} years`;
}

/** What is sent to whom, before anything is. */
export function sayPrivacy(host: string, questions: number): string {
  return `${host} is told where the drive runs, in about ${counted(questions, 'question')} in mixed order; where it begins and ends only as a square of about 3 km. No name, time, load or vehicle is sent: the program gives its own name and version. A question that is too much for the server is asked again in halves, one that it does not answer up to ${MOST_TRIES} times; after ${MOST_VAIN_MS / 60_000} minutes without any answer it is left alone.`;
}

/** @param meters as kilometres, to the tenth */
function km(meters: number): string {
  return (meters / 1000).toFixed(1);
}
