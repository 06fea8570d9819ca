import { hoursText } from '../clock/hours-text.ts';
import { type LocalMoment, utcMsOf, type WallTime, wallTimeText, weekdayOf } from '../clock/moment.ts';
import { dayName, sayMoment } from '../clock/print-dates.ts';
import type { Clause } from './conditional/conditional.ts';

/** When a clause holds, as a sentence: "It holds Monday to Friday 07:00 to 19:00." '' without a condition. */
export function sayClause(clause: Clause | undefined): string {
  if (clause === undefined || clause.parts.length === 0) return '';
  const words = clause.parts.map((part) => (part.kind === 'hours' ? hoursText(part.text) : part.text));
  const when = clause.parts.every((part) => part.kind === 'hours') ? '' : 'under this condition: ';
  return ` It holds ${when}${words.join(' and ')}.`;
}

/** A time as told to someone who passes at `now`: 19:00, Saturday 07:00, Monday 1 November, 00:00. */
export function sayTime(at: WallTime, now: LocalMoment): string {
  const text = wallTimeText(at);
  const time = text.slice(11);
  if (at.year === now.year && at.month === now.month && at.day === now.day) return time;
  const soon = utcMsOf(at) - utcMsOf(now) < 6 * 86_400_000;
  return soon ? `${dayName(weekdayOf(at))} ${time}` : sayMoment(text, String(now.year));
}
