import { dependsOnHolidays, type HoursPlace, hoursHold, nextHoursChange } from '../clock/hours.ts';
import type { LocalMoment } from '../clock/moment.ts';

/** Whether a place is open at a moment, and how that is said. */
export interface OpenAt {
  readonly is: 'open' | 'closed' | 'unknown';
  readonly say: string;
}

/** A day on which hours hold that say nothing of holidays. */
const HOLIDAY = 'PH 00:00-24:00';

/**
 * Whether mapped opening hours let the vehicle in at the moment that the place's clock shows. Hours that say nothing of
 * holidays leave a holiday unknown, and so every day where no list of holidays tells which they are.
 */
export function openAt(hours: string, moment: LocalMoment, place: HoursPlace): OpenAt {
  const held = hoursHold(hours, moment, place);
  if (held.is === 'unknown') return { is: 'unknown', say: `Open or not is not known: ${held.why}.` };
  if (/^\s*24\/7\s*$/.test(hours)) return { is: 'open', say: 'Open day and night.' };
  const at = clock(moment);
  if (!dependsOnHolidays(hours) && hoursHold(HOLIDAY, moment, place).is !== 'no')
    return {
      is: 'unknown',
      say: `${held.is === 'yes' ? 'Open' : 'Closed'} at ${at} on other days; its hours say nothing of holidays, and that day is one there or may be.`,
    };
  const change = nextHoursChange(hours, moment, place);
  const isSameDay = change !== undefined && change.day === moment.day && change.month === moment.month;
  const until =
    change === undefined || !isSameDay
      ? ''
      : `, ${held.is === 'yes' ? 'until' : 'opens at'} ${clock(change)}`;
  return held.is === 'yes'
    ? { is: 'open', say: `Open at ${at}${until}.` }
    : { is: 'closed', say: `Closed at ${at}${until}.` };
}

function clock({ hour, minute }: { readonly hour: number; readonly minute: number }): string {
  return `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
}
