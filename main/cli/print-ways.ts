import { LEVEL_WORD } from '../../geo/report/level.ts';
import { nameSubject } from '../../geo/report/name-place.ts';
import type { DriveReport } from '../../geo/report/report.ts';
import type { WayRound } from '../../geo/report/way-round.ts';
import { driveByWays } from '../../geo/report/ways/drive-by-ways.ts';
import { sayDriveByWays } from '../../geo/report/ways/say-drive-by-ways.ts';
import { sayBy, sayExtra, sayLeaves, sayWayItself } from '../../geo/report/ways/say-way.ts';
import { costTogether, driveTogether } from '../../geo/report/ways/ways-by-bar.ts';
import { distanceIn } from '../../geo/units/in-units.ts';
import { clip, listed } from '../../geo/units/text.ts';
import { wrap } from './wrap.ts';

/** The ways round a report holds, each with what it costs; nothing where none were asked for. */
export function wayLines(report: DriveReport, width: number): string[] {
  const { waysRound, noWayRound } = report;
  if (waysRound === undefined || noWayRound === undefined) return [];
  if (waysRound.length + noWayRound.length === 0) return ['Nothing on this drive needs a way round.', ''];
  const inner = (text: string) => wrap(`  ${text}`, width, '  ');
  const lines = waysRound.flatMap((way, i) => [
    ...wrap(`Way round ${i + 1}, past ${sayPassed(way.findingIds, report)}`, width),
    ...inner(sayWhole([way], report)),
    ...inner(sayWay(way)),
  ]);
  const none = noWayRound.flatMap((way) => [
    ...wrap(`No way round past ${sayPassed(way.findingIds, report)}`, width),
    ...inner(way.why),
  ]);
  return [
    ...togetherLines(report, waysRound, width),
    ...lines,
    ...none,
    ...wrap(sayTake(report, waysRound), width),
    '',
  ];
}

/** All that can be passed on one trip, where that takes several ways. */
function togetherLines(report: DriveReport, ways: readonly WayRound[], width: number): string[] {
  const numbers = driveTogether(ways);
  if (numbers.length < 2) return [];
  const taken = numbers.map((at) => ways[at]!);
  const cost = sayExtra(costTogether(taken), 'both');
  return [
    ...wrap(
      `Past all of it that can be passed: ways round ${listed(numbers.map((at) => at + 1))} together, ${cost}`,
      width,
    ),
    ...wrap(`  ${sayWhole(taken, report)}`, width, '  '),
  ];
}

/** The verdict of the whole drive, before that of a piece of it. */
function sayWhole(ways: readonly WayRound[], { findings }: DriveReport): string {
  const { verdict, say, folded } = sayDriveByWays(driveByWays(findings, ways), 'both');
  return `The whole drive by ${ways.length === 1 ? 'it' : 'them'}: ${LEVEL_WORD[verdict].toUpperCase()}. ${say}${folded === undefined ? '' : ` ${folded}`}`;
}

function sayPassed(ids: readonly string[], { findings }: DriveReport): string {
  const passed = ids.flatMap((id) => findings.find((finding) => finding.id === id) ?? []);
  return listed(
    passed.map(
      (finding) =>
        `${clip(finding.road ?? nameSubject(finding), 60)} at ${distanceIn('both', finding.fromM)}`,
    ),
  );
}

function sayWay(way: WayRound): string {
  const room = way.tightest === undefined ? '' : ` Its tightest place: ${way.tightest.say}`;
  const long = way.roads.length === 0 ? '' : `${distanceIn('both', way.lengthM)}, `;
  return `${sayLeaves(way, 'both')}, ${sayBy(way)}; ${long}${sayExtra(way, 'both')}. ${sayWayItself(way)}${room}`;
}

/** Which of them may be driven, and how to come by them; of one that is still barred it is never said to drive it. */
function sayTake({ findings }: DriveReport, ways: readonly WayRound[]): string {
  if (ways.length === 0) return '';
  const isFree = (taken: readonly WayRound[]) => driveByWays(findings, taken).verdict !== 'barred';
  const together = driveTogether(ways);
  const free = ways.flatMap((way, i) => (isFree([way]) ? [i + 1] : []));
  const all = together.length > 1 ? ', those together as ways-round-together.gpx' : '';
  const files = `with --way-round --out FOLDER the drive by each is written there as way-round-NUMBER.gpx${all}.`;
  const which = [
    ...(together.length > 1 && isFree(together.map((at) => ways[at]!)) ? ['by those together'] : []),
    ...(free.length > 0 ? [`by way round ${listed(free)}`] : []),
  ];
  if (which.length === 0)
    return `By none of these is the whole drive free of what bars it: do not drive them like this. To plan on from one: ${files}`;
  const others =
    free.length < ways.length ? ' By any other way alone it is still barred: do not drive it like that.' : '';
  return `Nothing mapped bars the whole drive ${which.join(', or ')}.${others} To take one: ${files}`;
}
