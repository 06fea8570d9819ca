import { type CheckInput, checkDrive } from '../check.ts';
import type { Drive } from '../drive/drive.ts';
import type { Route } from '../drive/gpx/route.ts';
import { stretchesOf } from '../drive/match/lay-legs.ts';
import type { EdgePart } from '../drive/match/trace-paths.ts';
import { readLeaving } from '../drive/times/leaving.ts';
import type { Place } from '../earth/sphere.ts';
import { notesHolding } from '../notes/holding.ts';
import type { DriveReport } from '../report/report.ts';
import { fail, ok, type Problem, type Result } from '../result.ts';
import { DEFAULT_MARGINS } from '../rules/rule.ts';
import { brokenTurns, lengthOf } from './along/splice.ts';
import { fieldFor } from './field.ts';
import { layNotes } from './noted/lay-notes.ts';
import { isDoubt, type JudgedWay, type Lessons, learn } from './past/judge-way.ts';
import { denseRoute } from './plan/dense-route.ts';
import { layLegs, type PlanStop } from './plan/lay-legs.ts';
import { placeFault, sayNoLeg } from './plan/say-faults.ts';
import { snap } from './plan/snap.ts';
import type { Prefer } from './price/prices.ts';
import { clockFor } from './search/clock.ts';
import { emptyOverlay } from './search/overlay.ts';
import type { Question } from './search/question.ts';

/** A place a plan leads through. */
export interface PlanPlace extends Place {
  /** the vehicle stops there, so that roads for those who go there are open to it; first and last always do */
  readonly stop?: boolean;
}

export interface PlanInput
  extends Pick<
    CheckInput,
    | 'roads'
    | 'card'
    | 'load'
    | 'margins'
    | 'country'
    | 'day'
    | 'program'
    | 'made'
    | 'lookUp'
    | 'notes'
    | 'localNotes'
  > {
  /** two or more, in the order they are driven */
  readonly places: readonly PlanPlace[];
  readonly prefer?: Prefer;
  /** wall time, 2027-06-12T09:30, where the first place is */
  readonly leave?: string;
  /** name of the drive and of its file */
  readonly name?: string;
}

export interface Planned {
  /** dense: matched again it follows the same roads */
  readonly route: Route;
  readonly drive: Drive;
  readonly report: DriveReport;
  /** where each place was put on the roads, and how far from it that is */
  readonly places: readonly { readonly at: Place; readonly awayM: number }[];
}

/** Searches and checks in turn, at most so often. */
const MOST_TRIES = 10;

/**
 * A drive for this vehicle through two places or more, checked by the checker itself. Order is kept, no place between
 * turns the vehicle round, and each is put on the nearest road that the vehicle may use and that leads somewhere.
 * @returns a problem whose code is `place …` with a place that cannot be used, or `no way` where no road leads on
 */
export function planDrive(input: PlanInput): Result<Planned> {
  const fault = placeFault(input.places);
  if (fault !== undefined) return fault;
  const field = fieldFor(
    input.roads,
    { card: input.card, load: input.load, margins: input.margins ?? DEFAULT_MARGINS },
    { prefer: input.prefer ?? 'quickest', country: input.country },
  );
  const overlay = emptyOverlay();
  const base: Question = {
    field,
    terms: { ferries: false },
    overlay,
    sources: [],
    targets: [],
    lookUp: input.lookUp,
  };
  const stops = snapAll(input, { ...base, terms: { ferries: true } });
  if (!stops.ok) return stops;
  layNotes(overlay, {
    costs: field.costs,
    notes: notesHolding(input.localNotes, input.leave ?? input.made),
    spared: new Set(stops.value.flatMap(({ directed }) => directed.map((one) => one >> 1))),
  });
  const lessons: Lessons = { overlay, learnt: new Set(), doubtFree: false };
  const first = settlePlan(input, stops.value, base, lessons);
  // by ferry only where nothing else leads there
  const settled =
    'leg' in first ? settlePlan(input, stops.value, { ...base, terms: { ferries: true } }, lessons) : first;
  if ('fault' in settled) return { ok: false, error: settled.fault };
  if ('leg' in settled) return fail('no way', sayNoLeg(settled.leg, stops.value.length));
  return ok({ ...settled, places: stops.value.map(({ at, awayM }) => ({ at, awayM })) });
}

function snapAll(input: PlanInput, base: Question): Result<PlanStop[]> {
  const stops: PlanStop[] = [];
  for (const [i, place] of input.places.entries()) {
    const snapped = snap(place, base, i === input.places.length - 1 ? 'from' : 'on');
    if (typeof snapped === 'string') return placeProblem(input, i, snapped);
    stops.push({ ...snapped, stop: place.stop === true });
  }
  return ok(stops);
}

function placeProblem(
  { places, roads }: PlanInput,
  i: number,
  why: 'no road' | 'none for us',
): Result<never> {
  const { lat, lon } = places[i] as PlanPlace;
  const which = `Place ${i + 1} (${lat.toFixed(5)}, ${lon.toFixed(5)})`;
  if (why === 'none for us')
    return fail(
      'place closed',
      `${which}: no road near it is open to this vehicle and leads on. Choose a place on a road it may use.`,
    );
  const swapped = Math.abs(lon) <= 90 && roads.index.near(lon, lat, 1000).length > 0;
  return swapped
    ? fail(
        'place swapped',
        `${which} lies off the map, but with latitude and longitude swapped it lies on it. Latitude comes first.`,
      )
    : fail(
        'place off the map',
        `${which}: no road within 4 km is on the map that is loaded. Choose a place on land, or load the map there.`,
      );
}

type Settled =
  | Pick<Planned, 'route' | 'drive' | 'report'>
  | { readonly leg: number }
  /** the leave time cannot be read there */
  | { readonly fault: Problem };

function settlePlan(input: PlanInput, stops: readonly PlanStop[], base: Question, lessons: Lessons): Settled {
  let question = base;
  let leg = 0;
  let passed: Pick<Planned, 'route' | 'drive' | 'report'> | undefined;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const laid = layLegs(stops, question);
    if (laid.parts === undefined) {
      leg = laid.leg;
      break;
    }
    const checked = checkParts(input, laid.parts, base);
    if ('fault' in checked) return checked;
    if (question.terms.clockAt === undefined && checked.clockAt !== undefined) {
      // now that the place it leaves from is known, so is its clock
      question = { ...base, terms: { ...base.terms, clockAt: checked.clockAt } };
      if (
        checked.report.findings.some(
          ({ leaveTimes, passesAt, level }) => level === 'barred' || (leaveTimes ?? passesAt) !== undefined,
        )
      )
        continue;
    }
    const { report } = checked;
    const bars = report.findings.filter(({ level }) => level === 'barred');
    if (bars.length === 0) passed = checked;
    const judged: JudgedWay = {
      detour: { fromM: 0, toM: 0, parts: laid.parts, costTenths: 0, gives: 0 },
      lengthM: lengthOf(laid.parts),
      extraS: 0,
      findings: report.findings,
      bars,
    };
    const weighed = passed !== undefined && !report.findings.some(isDoubt);
    if (weighed || !learn({ steps: [] }, judged, lessons)) break;
  }
  return passed === undefined ? { leg } : { route: passed.route, drive: passed.drive, report: passed.report };
}

interface Checked extends Pick<Planned, 'route' | 'drive' | 'report'> {
  readonly clockAt: ReturnType<typeof clockFor> | undefined;
}

function checkParts(
  input: PlanInput,
  parts: readonly EdgePart[],
  { field }: Question,
): Checked | { readonly fault: Problem } {
  const { roads, country, leave, name = '' } = input;
  const { graph } = field.costs;
  const legs = stretchesOf(parts, 0, graph);
  const bare: Drive = { lengthM: lengthOf(parts), legs, guessed: [], doubtful: [], brokenTurns: [] };
  const drive = { ...bare, brokenTurns: brokenTurns(bare, roads, graph) };
  const route = denseRoute(drive, roads, name);
  const read = leave === undefined ? undefined : readLeaving(leave, drive, roads, country);
  if (read?.ok === false) return { fault: read.error };
  const leaving = read?.value;
  const { places: _, prefer: __, leave: ___, name: ____, ...rest } = input;
  const report = checkDrive({
    ...rest,
    route,
    file: `${name || 'plan'}.gpx`,
    drive,
    ...(leaving && { leaving }),
  });
  return { route, drive, report, clockAt: leaving && clockFor(roads, leaving, country) };
}
