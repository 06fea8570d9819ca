import { distanceIn, type Units } from '../units/in-units.ts';
import { countedInWords } from '../units/text.ts';
import type { DriveReport } from './report.ts';
import { sayFolded } from './say-slight.ts';
import { placesAt } from './verdict.ts';

/**
 * What the verdict means for whoever drives, in one sentence. It stands beside the verdict's word (`LEVEL_WORD`), and
 * what is folded away is told after it (`sayFolded`);
 * with a `clear` drive it is all there is to say, and stands here.
 * @param units with them, over how much of the drive nothing is said
 */
export function sayVerdict(
  { verdict, findings }: Pick<DriveReport, 'verdict' | 'findings'>,
  units?: Units,
): string {
  if (verdict === 'clear')
    return sayFolded(findings) ?? 'That is no promise: what nobody has mapped is not known here.';
  const count = placesAt(findings, verdict);
  const at = `${countedInWords(count, 'place')}${verdict === 'unknown' && units ? sayReach(findings, units) : ''}`;
  switch (verdict) {
    case 'barred':
      return `Do not drive this as planned: this vehicle is barred at ${at}.`;
    case 'tight':
      return `Nothing mapped bars it, but at ${at} it may not get through. Look before you drive it.`;
    case 'unknown':
      return `Nothing mapped bars it, but at ${at} nothing says whether it gets through. Find out before you drive it.`;
    case 'care':
      return `Nothing mapped stops it. Drive with care at ${at}.`;
  }
}

/** Shorter ones are places, whatever their number. */
const LONG_M = 1_000;

/** How much of the drive nothing is said of, where that is no mere place: `, 10.5 km in all,`. */
function sayReach(findings: DriveReport['findings'], units: Units): string {
  const spans = findings.filter(({ level, folded }) => level === 'unknown' && folded !== true);
  let [lengthM, doneM] = [0, 0];
  for (const { fromM, toM } of spans.toSorted((a, b) => a.fromM - b.fromM)) {
    lengthM += Math.max(0, toM - Math.max(fromM, doneM));
    doneM = Math.max(doneM, toM);
  }
  return lengthM < LONG_M ? '' : `, ${distanceIn(units, lengthM)} in all,`;
}

/** A smaller share of a drive than this on mapped roads is chance: another place's roads happen to lie there. */
const LEAST_ON_ROADS = 0.02;

/** Whether a drive has no mapped road under it, or next to none: the map is of another place. */
export function liesElsewhere({ drivenM }: { readonly drivenM: number }, lengthM: number): boolean {
  return lengthM > 0 && drivenM < LEAST_ON_ROADS * lengthM;
}

/** A map of another place is no verdict on the drive. */
export function sayNoRoads({ match }: Pick<DriveReport, 'match'>): string {
  return match.swapped
    ? 'The drive lies off the map, but with latitude and longitude swapped it lies on it, so nothing on it is checked. The file has them the wrong way round: save it anew where it was planned.'
    : 'The map has no roads under this drive, so nothing on it is checked. Use a map that covers it.';
}

/** The verdict's sentence; of a drive that the map does not cover, that nothing on it is checked. */
export function sayOverall(
  report: Pick<DriveReport, 'verdict' | 'findings' | 'match' | 'route'>,
  units?: Units,
): string {
  return liesElsewhere(report.match, report.route.lengthM) ? sayNoRoads(report) : sayVerdict(report, units);
}
