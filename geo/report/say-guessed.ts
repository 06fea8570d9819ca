import { distanceIn, type Units } from '../units/in-units.ts';
import type { DriveReport } from './report.ts';

/**
 * How much of the drive was filled in between points that lie far apart, and what to do about it.
 * @returns undefined where every road is the route's own
 */
export function sayGuessedShare(
  { match, route }: Pick<DriveReport, 'match' | 'route'>,
  units: Units,
): string | undefined {
  const { guessedM } = match;
  if (!(guessedM > 0) || !(route.lengthM > 0)) return undefined;
  const share = Math.min(100, Math.max(1, Math.round((100 * guessedM) / route.lengthM)));
  return `${distanceIn(units, guessedM)} of ${distanceIn(units, route.lengthM)} (${share} %) is guessed: the route’s points lie far apart there, and another road may be meant. Record the drive, or plan it with the points closer together.`;
}
