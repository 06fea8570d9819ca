import type { CheckInput } from '../../check.ts';
import { meetStops, withStays } from '../../day/meet-stops.ts';
import type { Drive } from '../../drive/drive.ts';
import { pointAt } from '../../drive/point-at.ts';
import { timesOf } from '../../drive/times/times-of.ts';
import type { Timetable } from '../../drive/times/timetable.ts';
import { distanceM } from '../../earth/sphere.ts';
import { notesHolding } from '../../notes/holding.ts';
import type { LocalNote } from '../../notes/note.ts';
import type { Finding } from '../../report/finding.ts';
import type { DriveReport } from '../../report/report.ts';
import { WAY_KIND } from '../../roads/roads.ts';
import { DEFAULT_MARGINS } from '../../rules/rule.ts';
import type { Units } from '../../units/in-units.ts';
import { type DriveCosts, driveCosts } from '../along/drive-costs.ts';
import { type DriveStep, driveSteps } from '../along/drive-steps.ts';
import { fieldFor } from '../field.ts';
import type { Prefer } from '../price/prices.ts';
import { clockFor } from '../search/clock.ts';
import type { Field, Terms } from '../search/question.ts';

/** A checked drive that a way past something is looked for on. */
export interface PastInput {
  /** as the drive was checked */
  readonly check: CheckInput;
  readonly report: DriveReport;
  /** findings to pass that are tight or unknown; barred ones always are */
  readonly askedIds?: readonly string[];
  readonly prefer?: Prefer;
}

/** The drive laid on the graph, with all that every search past one of its bars shares. */
export interface Trip {
  readonly input: PastInput;
  readonly drive: Drive;
  readonly field: Field;
  readonly steps: readonly DriveStep[];
  readonly costs: DriveCosts;
  /** what may be driven at first: ferries only where the drive takes one */
  readonly terms: Terms;
  /** a lower bound on what is left to the drive's end, tenths of seconds */
  readonly leftTenths: (node: number) => number;
  /** of the drive as it is */
  readonly times: Timetable;
  readonly totalS: number;
  /** what the firm knows of roads, as far as it holds when the drive leaves */
  readonly localNotes: readonly LocalNote[];
  /** what its sentences are in */
  readonly units: Units;
  /** findings to be passed */
  readonly wanted: readonly Finding[];
}

/** No motorhome is expected to go faster: tenths of seconds a metre, a little less for the rounding of distances. */
const LEAST_PER_M = 0.995 * 0.36;

/** @param guesses roads off the drive are guessed at: its searches have to be asked by `askJudged` */
export function layTrip(input: PastInput, { guesses = false }: { readonly guesses?: boolean } = {}): Trip {
  const { check, report } = input;
  const { drive, roads, card, load, country } = check;
  const asker = { card, load, margins: check.margins ?? DEFAULT_MARGINS };
  const field = fieldFor(roads, asker, {
    prefer: input.prefer ?? 'quickest',
    country,
    guesses,
    lookUp: check.lookUp,
  });
  const steps = driveSteps(drive, roads, field.costs.graph);
  for (const { directed } of steps) field.costs.settle(directed);
  const ferries = drive.legs.some(
    (leg) => leg.kind === 'stretch' && roads.ways.kind[leg.way] === WAY_KIND.ferry,
  );
  const asked = new Set(input.askedIds);
  const { leaving } = check;
  const met = check.day && meetStops(check.day, drive, roads);
  const times = withStays(timesOf(drive, roads, card, country), met);
  return {
    input,
    drive,
    field,
    steps,
    costs: driveCosts(steps, field.costs),
    terms: leaving === undefined ? { ferries } : { ferries, clockAt: clockFor(roads, leaving, country) },
    leftTenths: leftTo(pointAt(drive, roads, steps.at(-1)?.toM ?? drive.lengthM), roads.nodes),
    times,
    totalS: times.totalS,
    localNotes: notesHolding(check.localNotes, leaving?.text ?? check.made),
    units: check.units ?? 'metric',
    wanted: report.findings.filter(({ level, id }) => level === 'barred' || asked.has(id)),
  };
}

/** Least tenths of seconds from a node to a place. */
export function leftTo(
  to: { readonly lat: number; readonly lon: number } | undefined,
  { lat, lon }: { readonly lat: Float64Array; readonly lon: Float64Array },
): (node: number) => number {
  if (to === undefined) return () => 0;
  return (node) => LEAST_PER_M * distanceM(lat[node]!, lon[node]!, to.lat, to.lon);
}
