import type { Drive, Stretch } from './match/drive.ts';
import { type DriveReport, type Finding, verdictOf } from './report.ts';
import type { Roads } from './roads/roads.ts';
import { WAY_KIND } from './roads/roads.ts';
import { countPositions } from './route/measure.ts';
import type { Route } from './route/route.ts';
import { SUBJECTS_IN_ORDER } from './subjects/index.ts';
import { DEFAULT_MARGINS, type Margins } from './subjects/rule.ts';
import type { VehicleCard } from './vehicle/card.ts';
import { envelopeOf } from './vehicle/envelope.ts';

/** Stands wherever a verdict is shown. */
export const STANDING_CAUTION =
  'Signs and the road decide. Map data is incomplete and may be old; this is an aid for planning, not a permit. Weigh the vehicle. Follow local rules.';

export interface CheckInput {
  readonly route: Route;
  /** file name only, as the user knows it */
  readonly file: string;
  readonly drive: Drive;
  readonly roads: Roads;
  readonly card: VehicleCard;
  readonly margins?: Margins;
  /** ISO 3166-1 alpha-2, in driving order */
  readonly country?: readonly string[];
  readonly leaveAt?: string;
  /** sentences about the files read, shown with the verdict */
  readonly notes?: readonly string[];
  /** program name and version, and the moment of the check (ISO 8601): given, since geo has no clock */
  readonly program: string;
  readonly made: string;
}

/**
 * Holds one matched drive against one vehicle: every subject is asked, and what they say is put in driving order.
 * Matching is the caller's, so that another vehicle or margin needs no second match.
 */
export function checkDrive(input: CheckInput): DriveReport {
  const { route, drive, roads, card } = input;
  const country = input.country ?? [];
  const ruleInput = {
    drive,
    roads,
    card,
    envelope: envelopeOf(card),
    margins: input.margins ?? DEFAULT_MARGINS,
    country,
  };
  const findings = SUBJECTS_IN_ORDER.flatMap((subject) => subject(ruleInput)).sort(inDrivingOrder);
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
    ...(input.leaveAt === undefined ? {} : { leaveAt: input.leaveAt }),
    country: [...country],
    map: { sources: roads.sources.map((source) => ({ ...source })), roads: countDriven(roads) },
    match: matchLengths(drive),
    roads: drive.legs.filter((leg) => leg.kind === 'stretch').map((leg) => describeStretch(leg, roads)),
    findings,
    verdict: verdictOf(findings),
    cautions: [STANDING_CAUTION, ...(input.notes ?? []), ...roads.notes],
  };
}

function inDrivingOrder(a: Finding, b: Finding): number {
  return a.fromM - b.fromM || a.toM - b.toM || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

function countDriven(roads: Roads): number {
  const ids = new Set<number>();
  for (let way = 0; way < roads.ways.count; way++)
    if (roads.ways.kind[way] !== WAY_KIND.around) ids.add(roads.ways.id[way] as number);
  return ids.size;
}

function matchLengths(drive: Drive): DriveReport['match'] {
  const sum = { drivenM: 0, offMapM: 0, guessedM: 0 };
  for (const leg of drive.legs) {
    if (leg.kind === 'stretch') sum.drivenM += leg.toM - leg.fromM;
    if (leg.kind === 'offMap') sum.offMapM += leg.toM - leg.fromM;
  }
  for (const span of drive.guessed) sum.guessedM += span.toM - span.fromM;
  return sum;
}

function describeStretch(stretch: Stretch, roads: Roads): DriveReport['roads'][number] {
  const tags = roads.ways.tags[stretch.way] ?? {};
  return {
    way: roads.ways.id[stretch.way] as number,
    forward: stretch.forward,
    fromM: stretch.fromM,
    toM: stretch.toM,
    ...(tags['name'] === undefined ? {} : { name: tags['name'] }),
    ...(tags['ref'] === undefined ? {} : { ref: tags['ref'] }),
    class: tags['highway'] ?? (tags['route'] === 'ferry' ? 'ferry' : 'unknown'),
  };
}
