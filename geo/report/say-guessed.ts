import { distanceIn, type Units } from '../units/in-units.ts';
import type { DriveReport } from './report.ts';

type Guessed = Pick<DriveReport, 'match' | 'route'>;

/**
 * How much of the drive was filled in between points that lie far apart, and what to do about it.
 * @returns undefined where every road is the route's own
 */
export function sayGuessedShare(report: Guessed, units: Units): string | undefined {
  const guessed = sayShare(report, units);
  return guessed && `${guessed} Record the drive, or plan it with the points closer together.`;
}

/** The same to who drives, and has the GPX. */
export function sayGuessedToDriver(report: Guessed, units: Units): string | undefined {
  const guessed = sayShare(report, units);
  return (
    guessed &&
    `${guessed} The GPX holds these points alone, so a device may lead along other roads: follow the line on this map. In doubt stop, and ask the firm.`
  );
}

/** To who hands the drive over: what the GPX is without the roads in between. */
export function sayKeepsPoints({ match }: Pick<Guessed, 'match'>): string | undefined {
  return match.guessedM > 0
    ? 'This route’s points lie far apart, and the GPX keeps them as they are: between them a device may lead along other roads than those that were checked.'
    : undefined;
}

function sayShare({ match, route }: Guessed, units: Units): string | undefined {
  const { guessedM } = match;
  if (!(guessedM > 0) || !(route.lengthM > 0)) return undefined;
  const share = Math.min(100, Math.max(1, Math.round((100 * guessedM) / route.lengthM)));
  return `${distanceIn(units, guessedM)} of ${distanceIn(units, route.lengthM)} (${share} %) is guessed: the route’s points lie far apart there, and another road may be meant.`;
}
