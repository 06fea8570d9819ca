import { dependsOnHolidays, type HoursPlace, hoursHold, nextHoursChange, ownClockIsEven } from './hours.ts';
import { type LocalMoment, utcMsOf } from './moment.ts';
import { offsetRuns } from './offset-runs.ts';
import { clockOf } from './zone.ts';

/** A stretch of time on the clocks of one zone (IANA name); milliseconds since 1970. */
export interface ZonedSpan {
  readonly zone: string;
  readonly fromMs: number;
  readonly toMs: number;
}

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/**
 * The moments within a stretch of time at which hours in the opening_hours syntax may begin or cease to hold; between
 * them the answer stays the same. Rising, milliseconds since 1970, on whole minutes.
 */
export function hoursChanges(text: string, span: ZonedSpan, place: HoursPlace): number[] {
  const { zone, fromMs, toMs } = span;
  if (!everyDay(span).every(({ moment }) => ownClockIsEven(moment))) return minuteByMinute(text, span, place);
  const runs = offsetRuns(zone, fromMs, toMs);
  const found = runs.flatMap((run, i) => {
    const changes = steppedThrough(
      text,
      { zone, fromMs: run.fromMs, toMs: runs[i + 1]?.fromMs ?? toMs },
      place,
    );
    // what the clocks skip or show again turns with them
    return i === 0 ? changes : [run.fromMs, ...changes];
  });
  return [...new Set(found)].sort((a, b) => a - b);
}

interface Day {
  readonly ms: number;
  readonly moment: LocalMoment;
}

/** The beginning of the stretch, and every midnight within. */
function everyDay({ zone, fromMs, toMs }: ZonedSpan): Day[] {
  const days: Day[] = [];
  for (let ms = fromMs; ms <= toMs; ) {
    const clock = clockOf(zone, ms);
    if (!clock.ok) break;
    const moment = clock.value;
    days.push({ ms, moment });
    ms += DAY_MS - (moment.hour * 60 + moment.minute) * MINUTE_MS - (ms % MINUTE_MS);
  }
  return days;
}

/** From change to change; what is supposed of holidays is supposed anew each day. */
function steppedThrough(text: string, span: ZonedSpan, place: HoursPlace): number[] {
  const found = new Set<number>();
  const days = everyDay(span);
  for (const [i, { ms, moment }] of days.entries()) {
    if (i > 0 && dependsOnHolidays(text)) found.add(ms);
    const endMs = days[i + 1]?.ms ?? span.toMs;
    let at: LocalMoment = moment;
    for (;;) {
      const change = nextHoursChange(text, at, place);
      if (change === undefined) break;
      const changeMs = utcMsOf(change) - moment.offsetMinutes * MINUTE_MS;
      if (changeMs > endMs) break;
      found.add(changeMs);
      at = { ...at, ...change };
    }
  }
  return [...found].sort((a, b) => a - b);
}

/** Where the computer's own clock is put forward or back the hours around that are not reckoned with but asked. */
function minuteByMinute(text: string, { zone, fromMs, toMs }: ZonedSpan, place: HoursPlace): number[] {
  const found: number[] = [];
  let before: string | undefined;
  for (let ms = Math.floor(fromMs / MINUTE_MS) * MINUTE_MS; ms <= toMs; ms += MINUTE_MS) {
    const clock = clockOf(zone, ms);
    if (!clock.ok) break;
    const answer = hoursHold(text, clock.value, place).is;
    if (before !== undefined && answer !== before) found.push(ms);
    before = answer;
  }
  return found;
}
