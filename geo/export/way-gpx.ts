import type { Route } from '../drive/gpx/route.ts';
import { smallest } from '../lists.ts';
import type { Day, StopTimes } from '../report/day.ts';
import { LEVEL_WORD } from '../report/level.ts';
import type { DriveReport } from '../report/report.ts';
import type { WayRound } from '../report/way-round.ts';
import { driveByWays } from '../report/ways/drive-by-ways.ts';
import { sayDriveByWays } from '../report/ways/say-drive-by-ways.ts';
import type { Result } from '../result.ts';
import { driveGpx } from './drive-gpx.ts';

/** Ways that are driven together. */
interface WaysTaken {
  readonly ways: readonly WayRound[];
  /** what they are called among those told: `way round 2` */
  readonly called: string;
}

/**
 * The whole drive by ways round, as GPX 1.1: its track, and a waypoint for every finding that is still on it. Where
 * something bars it still, the track's name begins with that; its description says what the whole drive comes to.
 * @param route the drive with the ways in place of its stretches
 */
export function wayGpx(report: DriveReport, route: Route, { ways, called }: WaysTaken): Result<string> {
  const by = driveByWays(report.findings, ways, alongChanged(ways));
  const { findings } = by;
  const { verdict, say, folded } = sayDriveByWays({ ...by, left: findings }, 'both');
  const name = `${route.name || report.route.file}, ${called}`;
  return driveGpx(
    { ...report, findings: [...findings], ...(report.day && { day: onWays(report.day, ways) }) },
    {
      ...route,
      name: verdict === 'barred' ? `STILL BARRED: ${name}` : name,
      description: [`${LEVEL_WORD[verdict]}.`, say, folded ?? ''].filter((part) => part !== '').join(' '),
    },
  );
}

/** Where a finding of the drive, or of one of the ways, is met along the drive with the ways in it. */
function alongChanged(ways: readonly WayRound[]): Parameters<typeof driveByWays>[2] {
  /** how much longer the ways before a place have made the drive */
  const longerM = (atM: number) =>
    ways.filter(({ toM }) => toM <= atM + SAME_PLACE_M).reduce((sum, { extraM }) => sum + extraM, 0);
  return (finding, way) => {
    const ownM = way === undefined ? 0 : way.fromM + longerM(way.fromM);
    const place = (m: number) => (way === undefined ? m + longerM(m) : m + ownM);
    return { ...finding, fromM: place(finding.fromM), toM: place(finding.toM) };
  };
}

/** Rounding of places along a drive. Metres. */
const SAME_PLACE_M = 0.5;

/** The stops that the ways leave on the drive, without the clocks and hours of those behind one: it takes another time. */
function onWays(day: Day, ways: readonly WayRound[]): Day {
  const stops = day.stops.filter(({ atM }) => ways.every(({ fromM, toM }) => atM <= fromM || atM >= toM));
  const firstM = smallest(ways.map(({ fromM }) => fromM));
  return { ...day, stops: stops.map((stop) => (stop.atM <= firstM ? stop : withoutClocks(stop))) };
}

function withoutClocks(stop: StopTimes): StopTimes {
  const { arriveAt: _at, leaveAt: _leave, latestLeaveAt: _latest, open: _open, osm: _osm, ...rest } = stop;
  return rest;
}
