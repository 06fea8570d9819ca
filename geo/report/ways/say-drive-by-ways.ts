import { distanceIn, type Units } from '../../units/in-units.ts';
import { clip, counted, listed } from '../../units/text.ts';
import type { Finding } from '../finding.ts';
import type { Verdict } from '../level.ts';
import { nameSubject } from '../name-place.ts';
import { sayFolded } from '../say-slight.ts';
import { sayVerdict } from '../say-verdict.ts';
import type { DriveByWays } from './drive-by-ways.ts';

/** What the whole drive comes to by some ways, in words; the level's own word (`LEVEL_WORD`) stands before them. */
export interface DriveByWaysSaid {
  readonly verdict: Verdict;
  /** the sentence of the verdict; where something still bars the drive, what does, and not to drive it */
  readonly say: string;
  /** what is folded away, as beside the drive's own verdict; undefined where nothing is, or where `say` tells it */
  readonly folded: string | undefined;
}

export function sayDriveByWays({ verdict, findings, left }: DriveByWays, units: Units): DriveByWaysSaid {
  const say =
    verdict === 'barred'
      ? `Still barred: ${sayBars(left, units)}. Do not drive it like this.`
      : sayVerdict({ verdict, findings });
  return { verdict, say, folded: verdict === 'clear' ? undefined : sayFolded(findings) };
}

/** More names than these nobody keeps in mind. */
const NAMES_MOST = 4;
const NAME_LONGEST = 40;

/** `Tanner Row at 5.0 km, height at 24.5 km and 3 other places` */
function sayBars(left: readonly Finding[], units: Units): string {
  const bars = left.filter(({ level }) => level === 'barred');
  const named = bars
    .slice(0, NAMES_MOST)
    .map(
      (finding) =>
        `${clip(finding.road ?? nameSubject(finding), NAME_LONGEST)} at ${distanceIn(units, finding.fromM)}`,
    );
  const more = bars.length - named.length;
  return listed([...named, ...(more > 0 ? [counted(more, 'other place')] : [])]);
}
