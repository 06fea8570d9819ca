import { type Leaving, zoneFor } from '../drive/times/leaving.ts';
import type { Timetable } from '../drive/times/timetable.ts';
import type { Finding } from '../report/report.ts';
import { placeAt } from '../rules/places.ts';
import type { RuleInput, SubjectRule } from '../rules/rule.ts';
import { watchClock } from './asked-places.ts';
import { type DayJudged, judgeDay, type Said } from './judge-day.ts';
import { leaveDay } from './leave-minutes.ts';
import { leaveFree } from './pass-free.ts';
import { sayLeaveFree } from './say-leave.ts';
import { turningPoints } from './turning-points.ts';

/** What a rule says of a drive, and where it asked the clock for that. */
export function askOnClock(rule: SubjectRule, input: RuleInput): Said {
  const { along, asked } = watchClock(input.along);
  return { rule, drafts: rule({ ...input, along }), asked };
}

interface LeftWhen {
  readonly times: Timetable;
  readonly leaving: Leaving;
  /** stands in where the place tells none (ISO 3166-1 alpha-2) */
  readonly country?: string;
}

/**
 * The drive at every leave time of the day of `leaving`, from what every rule said at that one.
 * @returns undefined where the day cannot be counted with
 */
export function judgeLeaveDay(
  input: RuleInput,
  said: readonly Said[],
  { times, leaving, country }: LeftWhen,
): DayJudged | undefined {
  const start = placeAt(input, 0);
  const day = leaveDay(leaving, zoneFor(start.lat, start.lon, country));
  return day && judgeDay(input, said, day, turningPoints(input, times, day));
}

/** A finding that hangs on hours, with the leave times that pass it by; any other as it is. */
export function withLeaveTimes(
  finding: Finding & { readonly passesAt: string },
  day: DayJudged,
  leaveAt: string,
): Finding {
  const leaveTimes = leaveFree(day, finding);
  if (leaveTimes === undefined) return finding;
  const say = sayLeaveFree(leaveTimes, finding.passesAt, leaveAt);
  return { ...finding, leaveTimes, advice: `${finding.advice} ${say}` };
}
