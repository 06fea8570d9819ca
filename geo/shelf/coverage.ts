import { wrapLon } from '../earth/angles.ts';
import { distanceM } from '../earth/sphere.ts';
import type { DrawnRoute } from '../roads/discs.ts';
import type { Roads } from '../roads/roads.ts';

/** A road this near may be the one meant by the line. */
const ROAD_WITHIN_M = 100;
/** So long a stretch without one is more than a car park or a field's edge. */
const BARE_LEAST_M = 1_000;
/** Between points that lie far apart the road swings out: so much of the straight leg to each side, and no more than that. */
const SWING_PER_LEG = 0.25;
const SWING_MOST_M = 1_000;

/** How far a map covers a drive's line, by the roads near it: a file's outline says nothing of what is in it. */
export interface Coverage {
  readonly lengthM: number;
  /** stretches of over 1 km without a road within 100 m, metres along the line as drawn */
  readonly bare: readonly { readonly fromM: number; readonly toM: number }[];
}

/** Asks for roads along the whole line; gaps between its segments are not driven and count for nothing. */
export function coverageOf(route: DrawnRoute, roads: Pick<Roads, 'index'>): Coverage {
  const bare: { fromM: number; toM: number }[] = [];
  let fromM: number | undefined;
  let atM = 0;
  const end = () => {
    if (fromM !== undefined && atM - fromM > BARE_LEAST_M) bare.push({ fromM, toM: atM });
    fromM = undefined;
  };
  const ask = (lat: number, lon: number, withinM: number) => {
    if (roads.index.near(lat, lon, withinM).length > 0) end();
    else fromM ??= atM;
  };
  for (const { lat, lon } of route.segments) {
    for (let i = 0; i < lat.length; i++) {
      if (i > 0) {
        const [a, b] = [lat[i - 1]!, lon[i - 1]!];
        const legM = distanceM(a, b, lat[i]!, lon[i]!);
        const withinM = Math.max(ROAD_WITHIN_M, Math.min(SWING_MOST_M, SWING_PER_LEG * legM));
        const steps = Math.ceil((2 * legM) / withinM);
        const startM = atM;
        for (let step = 1; step < steps; step++) {
          const share = step / steps;
          atM = startM + share * legM;
          ask(a + share * (lat[i]! - a), wrapLon(b + share * wrapLon(lon[i]! - b)), withinM);
        }
        atM = startM + legM;
      }
      ask(lat[i]!, lon[i]!, ROAD_WITHIN_M);
    }
    end();
  }
  return { lengthM: atM, bare };
}
