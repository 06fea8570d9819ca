import { type CheckInput, checkDrive } from '../../../geo/check.ts';
import type { DayPlan, DayStop } from '../../../geo/day/plan.ts';
import type { Drive } from '../../../geo/drive/drive.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { readLeaving } from '../../../geo/drive/times/leaving.ts';
import { wayAlong } from '../../../geo/graph/road-graph.ts';
import type { DriveReport } from '../../../geo/report/report.ts';
import type { Roads, Tags } from '../../../geo/roads/roads.ts';
import { COACHBUILT } from '../ask.ts';
import { roadsFrom } from '../build-roads.ts';

/** Degrees: east along one parallel from Portugal (UTC, UTC+1 in summer) into Spain, an hour ahead. */
const LAT = 38.88;
const FROM_LON = -7.6;
const KM_PER_DEG = 111.195 * Math.cos((LAT * Math.PI) / 180);

/** A road of so many ways of 2 km each, from Portugal into Spain, driven from end to end. */
export interface BorderRoad {
  readonly roads: Roads;
  readonly drive: Drive;
  readonly route: Route;
}

export function placeAtKm(km: number): { lat: number; lon: number } {
  return { lat: LAT, lon: FROM_LON + km / KM_PER_DEG };
}

/** @param tagsOf tags of the way so many ways after the start, beside its class */
export function borderRoad(ways: number, tagsOf: (way: number) => Tags = () => ({})): BorderRoad {
  const nodes: Record<string, [number, number]> = {};
  for (let i = 0; i <= ways; i++) {
    const { lat, lon } = placeAtKm(2 * i);
    nodes[`n${i}`] = [lat, lon];
  }
  const roads = roadsFrom({
    nodes,
    ways: Array.from({ length: ways }, (_, i) => ({
      id: i + 1,
      refs: [`n${i}`, `n${i + 1}`],
      tags: { highway: 'primary', maxspeed: '80', ...tagsOf(i) },
    })),
  });
  let atM = 0;
  const legs = Array.from({ length: ways }, (_, way) => {
    const lengthM = wayAlong(roads, way).at(-1) ?? 0;
    const fromM = atM;
    atM += lengthM;
    return {
      kind: 'stretch' as const,
      way,
      forward: true,
      alongFromM: 0,
      alongToM: lengthM,
      fromM,
      toM: atM,
    };
  });
  const drive = { lengthM: atM, legs, guessed: [], doubtful: [], brokenTurns: [] };
  const { lat, lon } = roads.nodes;
  const segment = { lat, lon, timeMs: new Float64Array(lat.length).fill(Number.NaN) };
  return { roads, drive, route: { name: 'Over the border', kind: 'track', number: 1, segments: [segment] } };
}

/** The report of that drive with a day planned on it. */
export function checkDay(
  { roads, drive, route }: BorderRoad,
  { leaveAt, ...day }: DayPlan & { readonly leaveAt?: string },
  extra: Partial<CheckInput> = {},
): DriveReport {
  const leaving = leaveAt === undefined ? undefined : readLeaving(leaveAt, drive, roads);
  if (leaving?.ok === false) throw new Error(leaving.error.message);
  return checkDrive({
    route,
    file: 'day.gpx',
    drive,
    roads,
    card: COACHBUILT,
    day,
    ...(leaving && { leaving: leaving.value }),
    program: 'test',
    made: '2027-01-01T00:00:00Z',
    ...extra,
  });
}

export function stopAtKm(km: number, stayMin: number, rest: Partial<DayStop> = {}): DayStop {
  return { name: `Stop at ${km} km`, ...placeAtKm(km), stayMin, ...rest };
}
