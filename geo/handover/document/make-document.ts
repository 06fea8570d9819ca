import { dayInWords, sayMoment } from '../../clock/print-dates.ts';
import { clockText, durationText } from '../../clock/print-times.ts';
import type { Route } from '../../drive/gpx/route.ts';
import { sayOffMapTime, sayUntimed } from '../../drive/times/off-map-time.ts';
import { sayBetterTimes } from '../../leave/say-leave.ts';
import { sayLoaded } from '../../load/load-result.ts';
import { LOAD_MARGIN_KG } from '../../load/weigh/load-level.ts';
import { headlineOf } from '../../load/weigh/say-plates.ts';
import { LEVEL_WORD } from '../../report/level.ts';
import { sayMapAge } from '../../report/map-age.ts';
import type { DriveReport } from '../../report/report.ts';
import { sayFoldedPlaces } from '../../report/say-slight.ts';
import { sayOverall } from '../../report/say-verdict.ts';
import { STANDING_CAUTION } from '../../report/standing-caution.ts';
import { distanceIn } from '../../units/in-units.ts';
import { clip, listed, plainLine } from '../../units/text.ts';
import type { TurnOff } from '../../wayround/turn-off.ts';
import { bigFigures } from './big-figures.ts';
import { dayToKeep } from './day-to-keep.ts';
import type { HandOverDocument, SheetHead } from './document.ts';
import { sayNotChecked } from './not-checked.ts';
import { placesToKnow } from './places-to-know.ts';
import { sayEnds } from './say-ends.ts';
import { sayWayOut } from './say-way-out.ts';
import { turnsToKnow } from './turns-to-know.ts';

/** What a handing-over is made from. Dates and numbers are given: here is no clock. */
export interface HandOverInput {
  readonly report: DriveReport;
  readonly route: Route;
  /** by finding id, as `lastTurnOffs` tells them */
  readonly turnOffs: ReadonlyMap<string, TurnOff | undefined>;
  readonly sheet: Pick<SheetHead, 'number' | 'replaces'>;
  /** the firm's own heading and the telephone the driver rings; '' where none is set */
  readonly firm: { readonly heading: string; readonly telephone: string };
  /** what to see to before setting off */
  readonly before: readonly string[];
}

/** No firm writes more on a line. */
const LONGEST_LINE = 200;

/** Everything that the driver takes along, in finished sentences, from one checked drive. */
export function makeDocument({
  report,
  route: planned,
  turnOffs,
  sheet,
  firm,
  before,
}: HandOverInput): HandOverDocument {
  const { route, vehicle, verdict, load, made, program, map } = report;
  const places = placesToKnow(report, turnOffs);
  const telephone = clip(firm.telephone, 60);
  return {
    drive: {
      name: plainLine(route.name) || plainLine(route.file) || 'Drive without a name',
      ends: sayEnds(report, planned),
      length: distanceIn('both', route.lengthM),
      times: sayTimes(report),
      lengthM: route.lengthM,
    },
    verdict: {
      level: verdict,
      head: verdict === 'barred' ? 'Do not drive' : LEVEL_WORD[verdict],
      say: sayOverall(report),
      wayOut: sayWayOut(report),
    },
    overload:
      load === undefined || load.over.length === 0
        ? undefined
        : headlineOf(load, { doubtful: false, marginKg: LOAD_MARGIN_KG }),
    card: vehicle,
    figures: bigFigures(vehicle),
    places,
    unnumbered: sayFoldedPlaces(report.findings, 'both'),
    turns: turnsToKnow(places),
    day: dayToKeep(report),
    before: before.map((line) => clip(line, LONGEST_LINE)).filter((line) => line !== ''),
    notChecked: sayNotChecked(report),
    contradicts: sayContradiction(telephone),
    cautions: [STANDING_CAUTION, ...(load === undefined ? [] : sayLoaded(load))],
    openLines: ['Handed to', 'By', 'Date', 'Signatures'],
    sheet: {
      ...sheet,
      made: dayInWords(made.slice(0, 10)),
      map: sayMap(map, made),
      program,
      heading: clip(firm.heading, LONGEST_LINE),
      telephone,
    },
  };
}

function sayTimes(report: DriveReport): string {
  const { timetable, leaveAt } = report;
  if (timetable === undefined) return '';
  const { staysS = 0 } = timetable;
  const stays = staysS > 0 ? `, and ${durationText(staysS)} at stops` : '';
  const untimed = sayUntimed(report, 'both');
  const leaves = timetable.leaveAt === undefined ? '' : `Leave ${sayMoment(timetable.leaveAt)}. `;
  if (untimed !== undefined) return `${leaves}Time of arrival unknown: ${untimed}.`;
  const offMap = sayOffMapTime(report, 'both');
  const driving = `${durationText(timetable.drivingS)} of driving, without breaks${stays}${offMap === undefined ? '' : `, ${offMap}`}`;
  if (timetable.leaveAt === undefined || timetable.arriveAt === undefined)
    return `${driving}. No leave time given.`;
  const better = leaveAt === undefined ? undefined : sayBetterTimes(report);
  const times = `Leave ${sayMoment(timetable.leaveAt)}, arrive ${clockText(timetable.arriveAt, timetable.leaveAt)}; ${driving}.`;
  return better === undefined ? times : `${times} ${better}`;
}

function sayMap({ sources }: DriveReport['map'], made: string): string {
  if (sources.length === 0) return 'No map: nothing on the shelf lies near this drive.';
  const names = listed(sources.map(({ name }) => clip(name, 60)));
  return `${sayMapAge(sources, made).say} ${names}. © OpenStreetMap contributors, Open Database Licence (openstreetmap.org/copyright).`;
}

function sayContradiction(telephone: string): string {
  const ring = telephone === '' ? 'ring whoever handed you this sheet' : `ring ${telephone}`;
  return `Where a sign says less than this sheet, the sign is right: stop, do not go under or through, and ${ring}. After touching a bridge: stop, keep everyone back, ring the police and the number on the bridge’s plate.`;
}
