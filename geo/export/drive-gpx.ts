import type { Waypoint, WrittenRoute } from '../drive/gpx/gpx-text.ts';
import { writeGpx } from '../drive/gpx/write-gpx.ts';
import type { Place } from '../earth/sphere.ts';
import { driverAdvice } from '../report/driver-advice.ts';
import { LEVEL_WORD } from '../report/level.ts';
import { namePlaceInLine } from '../report/name-place.ts';
import { type Numbered, numberedFindings } from '../report/numbered.ts';
import type { DriveReport, Finding, Subject } from '../report/report.ts';
import { isToBeFound } from '../report/say-slight.ts';
import type { Result } from '../result.ts';
import { stopWaypoints } from './stop-waypoint.ts';

/** What is said of turning off before a finding, and the last place for it; undefined where there is none. */
export interface TurnOffTold {
  readonly say: string;
  readonly place: { readonly at: Place; readonly atM: number } | undefined;
}

/**
 * The planned drive as GPX 1.1, its track as it was, with a waypoint for every finding that screens show, under its number
 * in driving order: `02 LOW 2.8`; one at the last place to turn off before it, `02 OFF NOW`; one without a number for what
 * is folded though it may stop the vehicle; and one for every stop of the day, `S1 Mill`. Names hold to the ten characters
 * that small devices show; the rest is in the comment. That there is no place to turn off is told with the finding.
 * @param turnOffs by finding id
 */
export function driveGpx(
  report: DriveReport,
  route: WrittenRoute,
  turnOffs: ReadonlyMap<string, TurnOffTold> = new Map(),
): Result<string> {
  return writeGpx(
    { ...route, name: route.name || report.route.file },
    [
      ...numberedFindings(report.findings).flatMap((one) => waypointsOf(one, turnOffs.get(one.finding.id))),
      ...report.findings.filter(isToBeFound).map(withoutNumber),
      ...(report.day === undefined ? [] : stopWaypoints(report.day)),
    ],
    report.program,
  );
}

/** What is folded though it may stop the vehicle: `LOW ?` */
function withoutNumber(finding: Finding): Waypoint {
  const { at, say, level } = finding;
  const name = wordOf(finding);
  return {
    lat: at.lat,
    lon: at.lon,
    name: level === 'unknown' ? `${name} ?` : name,
    comment: namePlaceInLine(finding, 'both'),
    description: [say, driverAdvice(finding)].filter((part) => part !== '').join(' '),
    symbol: 'Flag',
    type: LEVEL_WORD[level],
  };
}

function waypointsOf({ label, finding }: Numbered, turnOff: TurnOffTold | undefined): Waypoint[] {
  const { at, say, level } = finding;
  const off = turnOff?.place;
  const none = turnOff !== undefined && off === undefined ? turnOff.say : '';
  const place: Waypoint = {
    lat: at.lat,
    lon: at.lon,
    name: `${label} ${wordOf(finding)}`,
    comment: namePlaceInLine(finding, 'both'),
    description: [say, driverAdvice(finding), none].filter((part) => part !== '').join(' '),
    symbol: 'Flag',
    type: LEVEL_WORD[level],
  };
  if (turnOff === undefined || off === undefined) return [place];
  return [
    {
      lat: off.at.lat,
      lon: off.at.lon,
      name: `${label} OFF NOW`,
      comment: turnOff.say,
      description: `${turnOff.say} ${namePlaceInLine(finding, 'both')}`,
      symbol: 'Flag',
      type: 'Last place to turn off',
    },
    place,
  ];
}

/** A word that fits before or without its figure. */
const WORDS: Readonly<Record<Subject, string>> = {
  height: 'LOW',
  width: 'GAP',
  length: 'LONG',
  mass: 'WT',
  axle: 'AXL',
  access: 'CLOSED',
  barrier: 'GATE',
  ground: 'SOFT',
  water: 'WATER',
  slope: 'STEEP',
  narrow: 'NARROW',
  trees: 'TREES',
  tunnel: 'TUNNEL',
  ferry: 'FERRY',
  crossing: 'HUMP',
  turn: 'TURN',
  swing: 'TAIL',
  zone: 'ZONE',
  note: 'NOTE',
  map: 'NO MAP',
};
const FIGURE_LONGEST = 4;

/** `LOW 2.8`: metres or tonnes, rounded down as a limit is. */
function wordOf({ subject, kind, limit }: Finding): string {
  const word = kind === 'lane' ? 'LANE' : WORDS[subject];
  const figure = limit === undefined ? '' : figureOf(limit);
  return figure === '' || figure.length > FIGURE_LONGEST || word.length > 4 ? word : `${word} ${figure}`;
}

function figureOf({ value, unit }: NonNullable<Finding['limit']>): string {
  if (unit === 'm') return String(Math.floor(value * 10 + 1e-6) / 10);
  return unit === 'kg' ? `${Math.floor(value / 100 + 1e-6) / 10}t` : '';
}
