import type { Route } from '../drive/gpx/route.ts';
import type { Day, StopTimes } from '../report/day.ts';
import type { DriveReport } from '../report/report.ts';
import type { WayRound } from '../report/way-round.ts';
import type { Result } from '../result.ts';
import { driveGpx } from './drive-gpx.ts';

/**
 * The whole drive by a way round, as GPX 1.1: its track, and a waypoint for every finding that is still on it. What bars
 * the drive elsewhere bars it still.
 * @param route the drive with the way in place of its stretch
 * @param number of the way among those told
 */
export function wayGpx(report: DriveReport, route: Route, way: WayRound, number: number): Result<string> {
  const [before, after] = [
    report.findings.filter(({ toM }) => toM <= way.fromM),
    report.findings.filter(({ fromM }) => fromM >= way.toM),
  ];
  return driveGpx(
    {
      ...report,
      findings: [...before, ...way.findings, ...after],
      ...(report.day && { day: onWay(report.day, way) }),
    },
    { ...route, name: `${route.name || report.route.file}, way round ${number}` },
  );
}

/** The stops that the way leaves on the drive, without the clocks and hours of those behind it: it takes another time. */
function onWay(day: Day, { fromM, toM }: WayRound): Day {
  const stops = day.stops.filter(({ atM }) => atM <= fromM || atM >= toM);
  return { ...day, stops: stops.map((stop) => (stop.atM <= fromM ? stop : withoutClocks(stop))) };
}

function withoutClocks(stop: StopTimes): StopTimes {
  const { arriveAt: _at, leaveAt: _leave, latestLeaveAt: _latest, open: _open, osm: _osm, ...rest } = stop;
  return rest;
}
