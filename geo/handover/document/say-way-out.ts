import type { DriveReport } from '../../report/report.ts';
import { driveByWays } from '../../report/ways/drive-by-ways.ts';
import { sayDriveByWays } from '../../report/ways/say-drive-by-ways.ts';
import { sayBy, sayExtra, sayLeaves } from '../../report/ways/say-way.ts';
import { costTogether, driveTogether } from '../../report/ways/ways-by-bar.ts';
import { listed, lowerFirst } from '../../units/text.ts';

/** For a barred drive, which way round there is, or how to come by one; undefined for any other. */
export function sayWayOut({ verdict, findings, waysRound }: DriveReport): string | undefined {
  if (verdict !== 'barred') return undefined;
  if (waysRound === undefined)
    return 'No way round was looked for. Have whoever handed you this look in the program, with “Ways past …” under the verdict, and hand over the drive that comes of it.';
  const taken = driveTogether(waysRound).map((at) => waysRound[at]!);
  if (taken.length === 0) return 'No way round was found: each place below says why.';
  const ways = taken.map((way) => `${lowerFirst(sayLeaves(way, 'both'))}, ${sayBy(way)}`);
  const by = sayDriveByWays(driveByWays(findings, taken), 'both');
  const comes = by.verdict === 'barred' ? by.say : 'Nothing mapped bars the whole drive like that.';
  return `Way round: ${listed(ways)}; ${sayExtra(costTogether(taken), 'both')}. ${comes} It is chosen in the program, before setting off.`;
}
