import { LEVEL_WORD } from '../../geo/report/level.ts';
import type { DriveReport } from '../../geo/report/report.ts';
import { sayBy, sayStillBarred } from '../../geo/report/say-way.ts';
import type { WayRound } from '../../geo/report/way-round.ts';
import { distanceIn } from '../../geo/units/in-units.ts';
import { clip, listed } from '../../geo/units/text.ts';
import { wrap } from './wrap.ts';

/** The ways round a report holds, each with what it costs; nothing where none were asked for. */
export function wayLines(report: DriveReport, width: number): string[] {
  const { waysRound, noWayRound } = report;
  if (waysRound === undefined || noWayRound === undefined) return [];
  if (waysRound.length + noWayRound.length === 0) return ['Nothing on this drive needs a way round.', ''];
  const still = (way: WayRound) => {
    const said = sayStillBarred(way, report.findings, 'both');
    return said === undefined ? '' : `  ${said}.`;
  };
  const lines = waysRound.flatMap((way, i) => [
    ...wrap(`Way round ${i + 1}, past ${sayPassed(way.findingIds, report)}`, width),
    ...wrap(`  ${sayWay(way)}`, width, '  '),
    ...wrap(still(way), width, '  '),
  ]);
  const none = noWayRound.flatMap((way) => [
    ...wrap(`No way round past ${sayPassed(way.findingIds, report)}`, width),
    ...wrap(`  ${way.why}`, width, '  '),
  ]);
  const take =
    waysRound.length === 0
      ? []
      : wrap('To take one: check again with --out FOLDER, and drive its way-round-NUMBER.gpx.', width);
  return [...lines, ...none, ...take, ''];
}

function sayPassed(ids: readonly string[], { findings }: DriveReport): string {
  const passed = ids.flatMap((id) => findings.find((finding) => finding.id === id) ?? []);
  return listed(
    passed.map(({ road, fromM, subject }) => `${distanceIn('both', fromM)}, ${clip(road ?? subject, 60)}`),
  );
}

function sayWay(way: WayRound): string {
  const { fromM, toM, extraM, extraS, lengthM, verdict, tightest } = way;
  const by = sayBy(way);
  const cost = `${distanceIn('both', Math.abs(extraM))} ${extraM < 0 ? 'less' : 'more'}, ${Math.abs(extraS / 60).toFixed(0)} min ${extraS < 0 ? 'less' : 'more'}`;
  const room = tightest === undefined ? '' : ` Its tightest place: ${tightest.say}`;
  const off = `off the drive at ${distanceIn('both', fromM)}, back on it at ${distanceIn('both', toM)}`;
  return `${off}${by === undefined ? '' : `, ${by}`}; ${distanceIn('both', lengthM)}, ${cost}. ${verdict === 'clear' ? 'Nothing mapped stops it.' : `${LEVEL_WORD[verdict]}.`}${room}`;
}
