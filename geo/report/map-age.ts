import { dayInWords } from '../clock/print-dates.ts';

const OLD_AFTER_MONTHS = 6;

/** How old the map's data is: by its oldest file; one file without a date leaves the whole without one. */
type MapAge =
  | { readonly kind: 'undated' }
  /** the day of the data, `2026-05-01` */
  | { readonly kind: 'dated'; readonly day: string; readonly old: boolean };

/** @param now ISO 8601 */
function mapAge(sources: Sources, now: string): MapAge {
  const day = mapDay(sources);
  if (day === undefined) return { kind: 'undated' };
  return { kind: 'dated', day, old: day < monthsBefore(now, OLD_AFTER_MONTHS) };
}

type Sources = readonly { readonly dataDate?: string | undefined }[];

/** The day of a map's data, 2026-05-01, by its oldest file; undefined where one tells none. */
export function mapDay(sources: Sources): string | undefined {
  const days = sources.map(({ dataDate }) => /^\d{4}-\d{2}-\d{2}/.exec(dataDate ?? '')?.[0]);
  const dated = days.filter((day) => day !== undefined).sort();
  return dated.length < days.length ? undefined : dated[0];
}

/**
 * The day of the newest data that a map has had before, where what it has now is older or tells no date; undefined where
 * it is as new, and where nothing told a date before.
 * @param newerBefore the same of the map that gave way
 */
export function newerDayBefore(
  sources: Sources,
  gaveWay: { readonly sources: Sources; readonly newerBefore?: string | undefined },
): string | undefined {
  const [now, before] = [mapDay(sources), mapDay(gaveWay.sources)];
  const newest = [before, gaveWay.newerBefore]
    .filter((day) => day !== undefined)
    .sort()
    .at(-1);
  return newest !== undefined && (now === undefined || now < newest) ? newest : undefined;
}

/** That a map took the place of newer data: it may lack what stood there. @param newerBefore as `newerDayBefore` tells it */
export function sayOlderThanBefore(sources: Sources, newerBefore: string): string {
  const day = mapDay(sources);
  const before = `it took the place of data of ${dayInWords(newerBefore)}`;
  return day === undefined
    ? `Its file tells no date, and ${before}: it may be older. Take in a newer file if you have one.`
    : `Its data of ${dayInWords(day)} is older than what was there: ${before}. Take in a newer file if you have one.`;
}

/** The map's date beside a verdict, and what its age means. @param now ISO 8601 */
export function sayMapAge(
  sources: Sources,
  now: string,
): { readonly say: string; readonly doubtful: boolean } {
  const age = mapAge(sources, now);
  if (age.kind === 'undated')
    return {
      say: 'Map data undated: how old its limits are, nobody can tell.',
      doubtful: true,
    };
  const of = `Map data of ${dayInWords(age.day)}`;
  return age.old
    ? { say: `${of}, older than ${OLD_AFTER_MONTHS} months: newer limits are not on it.`, doubtful: true }
    : { say: `${of}.`, doubtful: false };
}

/** The same day so many months earlier, as a text that sorts; it may name a 31st that the month does not have. */
function monthsBefore(iso: string, months: number): string {
  const [year = 0, month = 1] = iso.split('-').map(Number);
  const since = year * 12 + (month - 1) - months;
  const two = (value: number) => String(value).padStart(2, '0');
  return `${Math.floor(since / 12)}-${two((since % 12) + 1)}-${iso.slice(8, 10)}`;
}
