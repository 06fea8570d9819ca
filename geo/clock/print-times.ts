import { sayMoment } from './print-dates.ts';

/**
 * `09:33` of a pass time (ISO 8601 with its offset); `Sunday 13 June, 00:10` where that is not the day of leaving.
 * @param leaveAt local wall time; without it the day counts as the same
 */
export function clockText(iso: string, leaveAt?: string): string {
  const isThatDay = leaveAt === undefined || leaveAt.startsWith(iso.slice(0, 10));
  return isThatDay ? iso.slice(11, 16) : sayMoment(iso, leaveAt);
}

/** `1 h 5 min`; a minute is the least. */
export function durationText(seconds: number): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes} min` : `${hours} h ${minutes % 60} min`;
}
