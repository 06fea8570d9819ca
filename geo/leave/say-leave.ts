import { clockText } from '../clock/print-times.ts';
import { smallest } from '../lists.ts';
import { LEVEL_WORD, VERDICTS, type Verdict } from '../report/level.ts';
import type { DriveReport, LeaveSpan, LeaveVerdict } from '../report/report.ts';
import { lowerFirst } from '../units/text.ts';

/** The end of a day stands as the hour 24. */
const isDaysEnd = (time: string): boolean => time.endsWith('T24:00');
const isDaysStart = (time: string): boolean => time.endsWith('T00:00');

/** `06:45` of a leave time. */
export const clockOfLeave = (time: string): string => time.slice(11, 16);

/**
 * When to leave instead, to who passes at a time: "You pass at 08:20; leave before 06:45 or after 16:50."
 * @param passesAt ISO 8601 with the offset of the place
 */
export function sayLeaveFree(spans: readonly LeaveSpan[], passesAt: string, leaveAt: string): string {
  const pass = `You pass at ${clockText(passesAt, leaveAt)}`;
  if (spans.length === 0) return `${pass}; leaving at another hour of that day does not help.`;
  return `${pass}; leave ${inWords(spans.map(sayWhen))}.`;
}

/** The more there are, the less each helps; the window and the report list them all. */
const MOST_SAID = 4;

function inWords(times: readonly string[]): string {
  const said = times.length > MOST_SAID ? [...times.slice(0, MOST_SAID - 1), 'at some other times'] : times;
  return said.length === 1 ? said[0]! : `${said.slice(0, -1).join(', ')} or ${said.at(-1)}`;
}

/** 06:45-16:50 */
const span = ({ from, to }: LeaveSpan): string => `${clockOfLeave(from)}-${clockOfLeave(to)}`;

/** "before 06:45", "after 16:50", "between 09:35 and 15:20" */
function sayWhen({ from, to }: LeaveSpan): string {
  if (isDaysStart(from)) return `before ${clockOfLeave(to)}`;
  return isDaysEnd(to)
    ? `after ${clockOfLeave(from)}`
    : `between ${clockOfLeave(from)} and ${clockOfLeave(to)}`;
}

/** The part of the day that a leave time lies in. */
export function spanHolding<T extends LeaveSpan>(spans: readonly T[], leaveAt: string): T | undefined {
  const time = leaveAt.trim().replace(' ', 'T').slice(0, 16);
  return spans.find(({ from, to }) => from <= time && time < to);
}

/**
 * Where another hour of the same day is better for the drive: "Leave 09:35-15:20: tight instead of barred."
 * @returns undefined where none is, or without a leave time
 */
export function sayBetterTimes({ leaveAt, leaveTimes = [], verdict }: DriveReport): string | undefined {
  // VERDICTS has the gravest first
  const best = VERDICTS.findLast((one) => leaveTimes.some((each) => each.verdict === one));
  if (leaveAt === undefined || best === undefined) return undefined;
  if (VERDICTS.indexOf(best) <= VERDICTS.indexOf(verdict)) return undefined;
  const spans = joined(leastOf(leaveTimes.filter((each) => each.verdict === best)));
  const times = inWords(spans.map(span));
  return `Leave ${times}: ${lowerFirst(LEVEL_WORD[best])} instead of ${lowerFirst(LEVEL_WORD[verdict])}.`;
}

/** Of one verdict, those parts of the day with the fewest places that stop the vehicle or may. */
function leastOf(parts: readonly LeaveVerdict[]): LeaveVerdict[] {
  const stops = ({ counts }: LeaveVerdict) => counts.barred + counts.tight + counts.unknown;
  const least = smallest(parts.map(stops));
  return parts.filter((part) => stops(part) === least);
}

/** Parts of the day that follow each other as one. */
function joined(spans: readonly LeaveSpan[]): LeaveSpan[] {
  const all: LeaveSpan[] = [];
  for (const { from, to } of spans) {
    const last = all.at(-1);
    if (last?.to === from) all[all.length - 1] = { from: last.from, to };
    else all.push({ from, to });
  }
  return all;
}

/** Minutes since the day began. */
export function minuteOfLeave(time: string): number {
  return Number(time.slice(11, 13)) * 60 + Number(time.slice(14, 16));
}

/** The times of each verdict that the day comes to, the best first: "00:00-06:45, 16:50-24:00". */
export function timesByVerdict(
  times: readonly LeaveVerdict[],
): { readonly verdict: Verdict; readonly when: string }[] {
  return [...VERDICTS].reverse().flatMap((verdict) => {
    const spans = joined(times.filter((each) => each.verdict === verdict));
    if (spans.length === 0) return [];
    return [{ verdict, when: spans.map(span).join(', ') }];
  });
}
