import { isPast, sayPast } from './clock/is-past.ts';
import { isoText } from './clock/moment.ts';
import { alpha2 } from './country/country-of.ts';
import { dayOf } from './day/day-of.ts';
import { type MetStops, meetStops, type StopPlace, withStays } from './day/meet-stops.ts';
import type { DayPlan } from './day/plan.ts';
import { sayFileStops, sayTurnAtEnd } from './day/say-file-stops.ts';
import type { Drive, Stretch } from './drive/drive.ts';
import type { Route } from './drive/gpx/route.ts';
import { countPositions } from './drive/gpx/route-length.ts';
import { matchLengths } from './drive/match-lengths.ts';
import { nameRoad } from './drive/name-road.ts';
import type { Leaving } from './drive/times/leaving.ts';
import { isTimed } from './drive/times/off-map-time.ts';
import { sayTimeNote } from './drive/times/say-time-note.ts';
import { timesOf } from './drive/times/times-of.ts';
import type { Timetable } from './drive/times/timetable.ts';
import { given } from './given.ts';
import { askOnClock, judgeLeaveDay, withLeaveTimes } from './leave/leave-times.ts';
import { sayLoaded } from './load/load-result.ts';
import type { LoadResult } from './load/result.ts';
import { notesHolding } from './notes/holding.ts';
import type { LocalNote } from './notes/note.ts';
import { sayLost } from './notes/say-note.ts';
import type { DriveReport } from './report/report.ts';
import { STANDING_CAUTION } from './report/standing-caution.ts';
import { verdictOf } from './report/verdict.ts';
import type { Roads } from './roads/roads.ts';
import { WAY_KIND } from './roads/roads.ts';
import { type Along, alongDrive } from './rules/along.ts';
import { findingsOf } from './rules/findings-of.ts';
import { RULES } from './rules/index.ts';
import { notesOnDrive } from './rules/noted/notes-on-drive.ts';
import { DEFAULT_MARGINS, type Margins } from './rules/rule.ts';
import { rulesUsed } from './rules/rules-used.ts';
import type { Units } from './units/in-units.ts';
import type { VehicleCard } from './vehicle/card.ts';
import { cardCautions } from './vehicle/card-warnings.ts';
import { envelopeOf } from './vehicle/envelope.ts';

export interface CheckInput {
  readonly route: Route;
  /** file name only, as the user knows it */
  readonly file: string;
  readonly drive: Drive;
  readonly roads: Roads;
  readonly card: VehicleCard;
  /** the same vehicle as loaded */
  readonly load?: LoadResult;
  readonly margins?: Margins;
  /** what the sentences are in; metric where left out */
  readonly units?: Units;
  /** ISO 3166-1 alpha-2: stands in where the place tells none, as at sea */
  readonly country?: string;
  /** as `readLeaving` gives it for this drive */
  readonly leaving?: Leaving;
  /** stops with their stay, and the return hour: what hangs on the clock is judged with the stays counted in */
  readonly day?: DayPlan;
  /**
   * places besides the day's where the vehicle has business, so that roads for those who go there are open to it; left out,
   * those that the drive's file marks
   */
  readonly stops?: readonly StopPlace[];
  /** what the firm knows of places; those whose last day is past when the drive leaves are left out */
  readonly localNotes?: readonly LocalNote[];
  /** sentences about the files read, shown with the verdict */
  readonly notes?: readonly string[];
  /** program name and version, and the moment of the check (ISO 8601): given, since geo has no clock */
  readonly program: string;
  readonly made: string;
  /** no road lies under the drive, and roads would with latitude and longitude swapped */
  readonly swapped?: boolean;
  /** called between the subjects; what it throws ends the check */
  readonly lookUp?: () => void;
}

/**
 * Holds one matched drive against one vehicle: every subject is asked, and what they say is put in driving order,
 * with the time it is passed where a leave time is given.
 * Matching is the caller's, so that another vehicle or margin needs no second match.
 */
export function checkDrive(input: CheckInput): DriveReport {
  const { route, drive, roads, card, load, leaving, units = 'metric' } = input;
  const met = input.day && meetStops(input.day, drive, roads);
  const stopsMet = meetStops({ stops: input.stops ?? route.stops ?? [] }, drive, roads).stops;
  const times = withStays(timesOf(drive, roads, card, input.country), met);
  const along = alongDrive(drive, roads, {
    countries: times.countries,
    country: input.country,
    leaving,
    times,
  });
  const country = countriesOf(times, input.country);
  const ruleInput = {
    drive,
    roads,
    card,
    envelope: envelopeOf(card),
    load,
    margins: input.margins ?? DEFAULT_MARGINS,
    units,
    country,
    along,
    stopsM: [...(met?.stops ?? []), ...stopsMet].map(({ atM }) => atM),
    localNotes: notesHolding(input.localNotes, leaving?.text ?? input.made),
  };
  const said = RULES.map((rule) => {
    input.lookUp?.();
    return askOnClock(rule, ruleInput);
  });
  const day =
    leaving && judgeLeaveDay(ruleInput, said, { times, leaving, ...given({ country: input.country }) });
  input.lookUp?.();
  const drafts = said.flatMap((one) => one.drafts);
  const findings = findingsOf(ruleInput, drafts).map((finding) => {
    const passesAt = clockText(along, finding.fromM);
    return leaving === undefined || day === undefined || passesAt === undefined
      ? finding
      : withLeaveTimes({ ...finding, passesAt }, day, leaving.text);
  });
  const notes = [
    ...(leaving?.note === undefined ? [] : [leaving.note]),
    ...(input.stops === undefined ? sayFileStops(route.stops?.length ?? 0, stopsMet.length) : []),
    ...(route.turnAtEnd ? [sayTurnAtEnd()] : []),
    ...(input.notes ?? []),
  ];
  const past = leaving !== undefined && isPast(leaving.unixMs, input.made);
  const { lost } = notesOnDrive(drive, roads, ruleInput.localNotes);
  const match = matchLengths(drive);
  const timed = isTimed({ match, route: drive });
  return {
    format: 'lanegauge.report',
    version: 1,
    program: input.program,
    made: input.made,
    route: {
      name: route.name,
      file: input.file,
      lengthM: drive.lengthM,
      segments: route.segments.length,
      positions: countPositions(route),
    },
    vehicle: card,
    ...given({ load, leaveAt: leaving?.text, leaveTimes: day && [...day.verdicts] }),
    country,
    map: { sources: roads.sources.map((source) => ({ ...source })), roads: countDriven(roads) },
    match: { ...match, ...(input.swapped === true && { swapped: true as const }) },
    roads: drive.legs.filter((leg) => leg.kind === 'stretch').map((leg) => describeStretch(leg, roads)),
    timetable: {
      ...given({
        leaveAt: clockText(along, 0),
        arriveAt: timed ? clockText(along, drive.lengthM) : undefined,
      }),
      ...(past && { past }),
      drivingS: Math.round(times.totalS),
      ...given({ staysS: met && staysOf(met) }),
      notes: times.notes.map((note) => sayTimeNote(note, units)),
    },
    ...given({
      day:
        met &&
        input.day &&
        dayOf({
          plan: input.day,
          met,
          drive,
          roads,
          times,
          leaving,
          line: route.segments,
          units,
          country: input.country,
        }),
    }),
    rules: rulesUsed(ruleInput, times),
    findings,
    verdict: verdictOf(findings),
    cautions: [
      STANDING_CAUTION,
      ...(load === undefined ? [] : sayLoaded(load)),
      ...notes,
      ...(past ? [sayPast(leaving.text)] : []),
      ...cardCautions(card, units),
      ...lost.map((one) => sayLost(one.note, one.lost)),
      ...roads.notes,
    ],
  };
}

function staysOf({ stops }: MetStops): number {
  return stops.reduce((sum, { stop }) => sum + stop.stayMin * 60, 0);
}

/** Countries in driving order, each once. */
function countriesOf(times: Timetable, standIn: string | undefined): string[] {
  const codes = times.countries.map((span) => span.country ?? standIn);
  if (codes.length === 0) codes.push(standIn);
  return [...new Set(codes.flatMap((code) => (code === undefined ? [] : [alpha2(code)])))];
}

/** The clock of the place when the vehicle passes; undefined without a leave time. */
function clockText(along: Along, m: number): string | undefined {
  const clock = along.clockAt(m);
  return clock && isoText(clock);
}

const driven = new WeakMap<Roads, number>();

/** Roads and ferries of the map, by OSM id; counted once, since a search for ways round checks again and again. */
function countDriven(roads: Roads): number {
  const known = driven.get(roads) ?? countIds(roads);
  driven.set(roads, known);
  return known;
}

function countIds(roads: Roads): number {
  const ids = new Set<number>();
  for (let way = 0; way < roads.ways.count; way++)
    if (roads.ways.kind[way] !== WAY_KIND.around) ids.add(roads.ways.id[way]!);
  return ids.size;
}

function describeStretch(stretch: Stretch, roads: Roads): DriveReport['roads'][number] {
  return {
    way: roads.ways.id[stretch.way]!,
    forward: stretch.forward,
    fromM: stretch.fromM,
    toM: stretch.toM,
    ...nameRoad(roads, stretch.way),
  };
}
