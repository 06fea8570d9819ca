import { shareOf } from '../earth/between.ts';
import { leastWhere } from '../earth/bisect.ts';
import { distanceM, type Place, placeBetween } from '../earth/sphere.ts';
import { placeAlong } from '../graph/place-on-edge.ts';
import { roadGraph } from '../graph/road-graph.ts';
import type { Roads } from '../roads/roads.ts';
import type { Drive, OffMap } from './drive.ts';
import { endOf } from './end-of.ts';

/** The place at a distance along the drive, and the leg it lies on; distances beyond the ends give the ends. */
export function pointAt(
  drive: Drive,
  roads: Roads,
  atM: number,
): (Place & { readonly legIndex: number }) | undefined {
  const { legs } = drive;
  if (legs.length === 0) return undefined;
  const legIndex = leastWhere(0, legs.length - 1, (i) => !(endOf(legs[i]!) < atM));
  const leg = legs[legIndex]!;
  if (leg.kind === 'gap') return { ...leg.from, legIndex };
  const onM = Math.min(leg.toM, Math.max(leg.fromM, atM)) - leg.fromM;
  if (leg.kind === 'offMap') return { ...placeOffMap(leg, onM), legIndex };
  const alongM = leg.forward ? leg.alongFromM + onM : leg.alongFromM - onM;
  return { ...placeAlong(roads, roadGraph(roads), leg.way, alongM), legIndex };
}

/** Where the drive is after so many metres; nowhere (0, 0) for a drive without legs. */
export function placeDriven(drive: Drive, roads: Roads, atM: number): Place {
  const { lat, lon } = pointAt(drive, roads, atM) ?? { lat: 0, lon: 0 };
  return { lat, lon };
}

function placeOffMap(leg: OffMap, onM: number): Place {
  let leftM = onM;
  for (let i = 1; i < leg.lat.length; i++) {
    const a = { lat: leg.lat[i - 1]!, lon: leg.lon[i - 1]! };
    const b = { lat: leg.lat[i]!, lon: leg.lon[i]! };
    const length = distanceM(a.lat, a.lon, b.lat, b.lon);
    if (leftM <= length || i === leg.lat.length - 1) {
      return placeBetween(a, b, shareOf(leftM, 0, length));
    }
    leftM -= length;
  }
  return { lat: leg.lat[0]!, lon: leg.lon[0]! };
}
