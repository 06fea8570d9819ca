import type { Finding, LeaveSpan, Level } from '../report/report.ts';
import type { Draft } from '../rules/finding.ts';
import { hoursOf } from './asked-places.ts';
import type { DayJudged, PlaceOverDay } from './judge-day.ts';
import { leaveText, MINUTES_OF_DAY } from './leave-minutes.ts';

/** What may stop the vehicle; what asks for care alone is nothing to wait for. */
const STOPS: ReadonlySet<Level> = new Set(['barred', 'tight', 'unknown']);

/**
 * The leave times of the day at which nothing of what a finding says is met there.
 * @returns undefined where hours have no say in it, or where it stops nobody
 */
export function leaveFree({ day, places }: DayJudged, finding: Finding): LeaveSpan[] | undefined {
  if (!STOPS.has(finding.level)) return undefined;
  const met = places
    .filter(({ asked }) => isOf(asked.place, finding))
    .map(({ states, stateAt }) => ({
      stops: states.map((drafts) => drafts.some((one) => says(one, finding))),
      stateAt,
    }));
  if (!met.some(({ stops, stateAt }) => stops[stateAt[day.chosen]!])) return undefined;
  const spans: LeaveSpan[] = [];
  let fromMinute: number | undefined;
  for (let minute = 0; minute <= MINUTES_OF_DAY; minute++) {
    const free = minute < MINUTES_OF_DAY && !met.some(({ stops, stateAt }) => stops[stateAt[minute]!]);
    if (free) fromMinute ??= minute;
    else if (fromMinute !== undefined) {
      spans.push({ from: leaveText(day, fromMinute), to: leaveText(day, minute) });
      fromMinute = undefined;
    }
  }
  const byHours = Object.values(finding.tags).some((text) => hoursOf(text).length > 0);
  return spans.length > 0 || byHours ? spans : undefined;
}

/** Places meet within this of each other by rounding. Metres. */
const SAME_PLACE_M = 0.01;

function isOf({ type, id, fromM, toM }: PlaceOverDay['asked']['place'], finding: Finding): boolean {
  return (
    fromM >= finding.fromM - SAME_PLACE_M &&
    toM <= finding.toM + SAME_PLACE_M &&
    finding.osm.some((one) => one.type === type && one.id === id)
  );
}

/** The same matter, by the tags that decide it, in whatever words. */
function says({ subject, level, tags }: Draft, finding: Finding): boolean {
  return (
    subject === finding.subject && STOPS.has(level) && Object.keys(tags).some((key) => key in finding.tags)
  );
}
