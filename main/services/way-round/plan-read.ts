import type { RouteSegment } from '../../../geo/drive/gpx/route.ts';
import { distanceM, type Place, placeBetween } from '../../../geo/earth/sphere.ts';
import type { Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import type { PlanInput, Planned } from '../../../geo/wayround/plan/plan-input.ts';
import { planDrive, sketchPlan } from '../../../geo/wayround/plan.ts';
import { type ReadRoads, segmentOf } from './ways-past.ts';

/** A plan on whatever map it is to be made on. */
export type PlanOnAnyMap = Omit<PlanInput, 'roads'>;

export interface PlannedOn extends Planned {
  readonly roads: Roads;
}

/** Roads swing out from the straight line between two places: so much of its length to each side, within bounds. */
const WIDE_PER_LEG = 0.2;
const WIDE_LEAST_M = 10_000;
const WIDE_MOST_M = 40_000;
/** The straight line is asked about in steps of this. */
const STEP_M = 4_000;

/** A drive laid out where all the roads there are have been read. */
export function planOn(roads: Roads, plan: PlanOnAnyMap): Result<PlannedOn> {
  const planned = planDrive({ ...plan, roads });
  return planned.ok ? { ok: true, value: { ...planned.value, roads } } : planned;
}

/** What the check makes dearer by no more than so much is not searched again on the roads far off. Share of the whole. */
const MOST_DEARER = 0.01;

/**
 * The same where roads are read piece by piece: those far about the straight lines between the places, on which the drive
 * is sketched without a check; then all that lies near the sketch, buildings and trees included, on which it is laid out
 * and checked. No drive on the far roads costs less than the sketch, so where the checked one costs hardly more it is
 * within that of the best. Else it is laid out and checked on the far roads, and again near what came of that.
 */
export async function planRead(read: ReadRoads, plan: PlanOnAnyMap): Promise<Result<PlannedOn>> {
  const line = straightLine(plan.places);
  const reachM = Math.min(WIDE_MOST_M, Math.max(WIDE_LEAST_M, WIDE_PER_LEG * longestLegM(plan.places)));
  const wide = await read({ segments: [line] }, { reachM, roadsAlone: true });
  const sketch = sketchPlan({ ...plan, roads: wide });
  if (!sketch.ok) return sketch;
  const { path, costTenths, turnsToLeave } = sketch.value;
  // near the line alone every road seems to end soon
  const known = { ...plan, turnsToLeave };
  const near = planOn(await read({ segments: [segmentOf(path)] }), known);
  if (near.ok && isAsGood(near.value, costTenths)) return near;
  const first = planOn(wide, known);
  if (!first.ok) return first;
  const { segments } = first.value.route;
  return planOn(await read({ segments }), known);
}

/** Whether searching farther off could bring little: the check said nothing new, or what it said costs little. */
function isAsGood({ searches, costTenths }: Planned, leastTenths: number): boolean {
  return searches === 1 || costTenths <= leastTenths * (1 + MOST_DEARER);
}

function longestLegM(places: readonly Place[]): number {
  return places.slice(1).reduce((most, to, i) => Math.max(most, apartM(places[i]!, to)), 0);
}

function apartM(a: Place, b: Place): number {
  return distanceM(a.lat, a.lon, b.lat, b.lon);
}

/** The places joined by straight lines, with points close enough that no road between is out of reach. */
function straightLine(places: readonly Place[]): RouteSegment {
  const line: Place[] = places.slice(0, 1);
  for (const [i, to] of places.slice(1).entries()) {
    const from = places[i]!;
    const steps = Math.max(1, Math.ceil(apartM(from, to) / STEP_M));
    for (let step = 1; step <= steps; step++) line.push(placeBetween(from, to, step / steps));
  }
  return {
    lat: Float64Array.from(line, ({ lat }) => lat),
    lon: Float64Array.from(line, ({ lon }) => lon),
    timeMs: new Float64Array(line.length).fill(Number.NaN),
  };
}
