import { toRad, wrapLon } from '../earth/angles.ts';
import { distanceM, METRES_PER_DEGREE } from '../earth/sphere.ts';

/**
 * Nodes on a driven road may lie half a segment from the place driven. Segments over 2.5 km are hardly known on
 * roads; this holds for 5 km and a road 500 m beside the route. A longer one is kept when the drive enters or leaves
 * it by an end, which then lies on the route; a drive that begins and ends within one is told as off the map. To test
 * segments without a node in reach would take the places of all nodes, and memory would no longer be flat.
 */
const REACH_M = 3_000;
/**
 * As far as following and checking a drive look along roads: the search between two positions of a recorded track may
 * cost a detour of 600 m and three times their distance more than the straight line, of a drawn one less
 * (`geo/drive/match/match-settings.ts`).
 */
const CLOSE_M = 1_000;
const CLOSE_PER_LEG = 3;
/** Between positions farther apart ways are searched for as far as roads are kept. */
const SPARSE_M = 150;
/** Discs closer together than this are one. */
const THINNED_M = 100;
/** As far as what stands beside the road is looked at and drawn. */
const NEAR_M = 500;
/** Between sparse points the road may swing out: half the straight leg is a detour of 1.4 times its length. */
const REACH_PER_LEG = 0.5;

/** A drive as drawn: unbroken segments of positions in degrees. */
export interface DrawnRoute {
  readonly segments: readonly { readonly lat: Float64Array; readonly lon: Float64Array }[];
}

/** Surroundings of one place of a drive. */
export interface Disc {
  readonly lat: number;
  /** may run beyond ±180 so that neighbours stay neighbours */
  readonly lon: number;
  /** roads */
  readonly reachM: number;
  /** roads that the drive may be on or be led over */
  readonly closeM: number;
  /** what lies around them; none where roads alone are wanted */
  readonly nearM: number;
}

/** How far about a drive roads are wanted. */
export interface Reach {
  /** metres; as far as a drive alone needs them where left out */
  readonly reachM?: number;
  /** nothing of what stands beside them: for ways that are looked for and not yet judged */
  readonly roadsAlone?: boolean;
}

/** Overlapping discs along the drawn line, close enough that no place within reach of it falls between. */
export function discsAlong(
  route: DrawnRoute,
  { reachM: leastM = REACH_M, roadsAlone = false }: Reach = {},
): Disc[] {
  // they overlap by half of the smallest
  const leastApartM = roadsAlone ? leastM : NEAR_M;
  const discs: Disc[] = [];
  const sparse = meanLegM(route) > SPARSE_M;
  let [lastLat, lastLon, lastLegM] = [Number.NaN, Number.NaN, -1];
  // of dense points one in a hundred metres is enough; its reach grows by what was left out
  const lay = (lat: number, lon: number, legM: number) => {
    if (legM <= lastLegM && distanceM(lastLat, lastLon, lat, lon) < THINNED_M) return;
    [lastLat, lastLon, lastLegM] = [lat, lon, legM];
    const reachM = leastM + REACH_PER_LEG * legM + THINNED_M;
    const closeM = sparse ? reachM : Math.min(reachM, CLOSE_M + CLOSE_PER_LEG * legM + THINNED_M);
    const nearM = roadsAlone ? 0 : NEAR_M + REACH_PER_LEG * legM + THINNED_M;
    discs.push({ lat, lon, reachM, closeM, nearM });
  };
  let before: number | undefined;
  for (const { lat, lon } of route.segments) {
    for (let i = 0; i < lat.length; i++) {
      const here = lat[i]!;
      // each longitude is brought next to the one before
      const there: number = before === undefined ? lon[i]! : before + wrapLon(lon[i]! - before);
      let legM = 0;
      if (i > 0 && before !== undefined) {
        const from = lat[i - 1]!;
        legM = distanceM(from, before, here, there);
        const steps = Math.ceil(legM / (leastApartM + REACH_PER_LEG * legM)) * 2;
        for (let step = 0; step < steps; step++) {
          const share = step / steps;
          lay(from + share * (here - from), before + share * (there - before), legM);
        }
      }
      lay(here, there, legM);
      before = there;
    }
  }
  return discs;
}

function meanLegM(route: DrawnRoute): number {
  let [legs, sumM] = [0, 0];
  for (const { lat, lon } of route.segments)
    for (let i = 1; i < lat.length; i++, legs++)
      sumM += distanceM(lat[i - 1]!, lon[i - 1]!, lat[i]!, lon[i]!);
  return legs === 0 ? 0 : sumM / legs;
}

/** How far `reachM` metres reach from a latitude, in degrees each way; never too little. */
export function reachDeg(lat: number, reachM: number): { dLat: number; dLon: number } {
  const dLat = reachM / METRES_PER_DEGREE;
  // the meridians stand closest at the poleward edge
  const edge = Math.min(90, Math.abs(lat) + dLat);
  const cos = Math.cos(toRad(edge));
  return { dLat, dLon: Math.min(180, dLat / Math.max(cos, 1e-9)) };
}
