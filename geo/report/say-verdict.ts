import { countedInWords } from '../units/text.ts';
import type { DriveReport } from './report.ts';
import { sayFolded } from './say-slight.ts';
import { placesAt } from './verdict.ts';

/**
 * What the verdict means for whoever drives, in one sentence. It stands beside the verdict's word (`LEVEL_WORD`), and
 * what is folded away is told after it (`sayFolded`);
 * with a `clear` drive it is all there is to say, and stands here.
 */
export function sayVerdict({ verdict, findings }: Pick<DriveReport, 'verdict' | 'findings'>): string {
  if (verdict === 'clear')
    return sayFolded(findings) ?? 'That is no promise: what nobody has mapped is not known here.';
  const count = placesAt(findings, verdict);
  const at = countedInWords(count, 'place');
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
export function sayOverall(report: Pick<DriveReport, 'verdict' | 'findings' | 'match' | 'route'>): string {
  return liesElsewhere(report.match, report.route.lengthM) ? sayNoRoads(report) : sayVerdict(report);
}
