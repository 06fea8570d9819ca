import { sayLoaded } from '../../load/load-result.ts';
import type { Finding } from '../../report/finding.ts';
import { isSettled } from '../../report/is-settled.ts';
import type { DriveReport } from '../../report/report.ts';
import { sayGuessedToDriver } from '../../report/say-guessed.ts';
import { liesElsewhere, sayNoRoads } from '../../report/say-verdict.ts';
import { STANDING_CAUTION } from '../../report/standing-caution.ts';
import { distanceIn } from '../../units/in-units.ts';
import { clip, plainLine } from '../../units/text.ts';

/** What the firm's own figure settles is folded; the driver is told by whose word it counts. */
function saySettled({ fromM, road, say }: Finding): string {
  const where = road === undefined ? '' : `, ${clip(road, 60)}`;
  return `At ${distanceIn('both', fromM)}${where}, by the firm’s own note and not by the map: ${plainLine(say)}`;
}

/** No map has these. */
const NEVER_CHECKED =
  'Roadworks, the day’s closures, parked cars, hanging branches, and signs put up since the map’s date: no map has them.';

/** What the report leaves open, in sentences; what no map ever has comes first. */
export function sayNotChecked(report: DriveReport): string[] {
  const { match, route, findings, leaveAt, load, cautions } = report;
  const guessed = sayGuessedToDriver(report, 'both');
  // these stand with the cautions
  const loaded = load === undefined ? [] : sayLoaded(load);
  return [
    NEVER_CHECKED,
    ...(liesElsewhere(match, route.lengthM)
      ? [sayNoRoads(report)]
      : match.offMapM >= 1
        ? [`${distanceIn('both', match.offMapM)} of the drive has no mapped road under it.`]
        : []),
    ...(guessed === undefined ? [] : [guessed]),
    ...findings.filter(isSettled).map(saySettled),
    ...(leaveAt === undefined
      ? ['Limits by the hour: no leave time is given, so they are not settled.']
      : []),
    ...(load === undefined ? ['The weight as loaded: judged by the plates alone. Weigh the vehicle.'] : []),
    ...cautions.filter((caution) => caution !== STANDING_CAUTION && !loaded.includes(caution)),
  ];
}
