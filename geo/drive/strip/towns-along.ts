import { labelText } from '../../basemap/label-text.ts';
import { distanceM } from '../../earth/sphere.ts';
import { lastOrZero } from '../../lists.ts';
import type { Roads } from '../../roads/roads.ts';
import { textOf } from '../../tags/text-of.ts';
import type { DriveTrace } from '../times/trace.ts';
import { placesEvery } from './places-every.ts';
import type { Strip } from './strip.ts';

/** How near a drive must come for a place to be told, and how large it is written. */
const PLACES: Readonly<Record<string, { readonly withinM: number; readonly size: 1 | 2 | 3 }>> = {
  city: { withinM: 3000, size: 3 },
  town: { withinM: 1800, size: 3 },
  suburb: { withinM: 700, size: 1 },
  village: { withinM: 1000, size: 2 },
  hamlet: { withinM: 600, size: 1 },
};
const STEP_M = 200;

/** Towns and villages by name, each where the drive first comes nearest. */
export function townsAlong(trace: DriveTrace, roads: Roads): Strip['towns'][number][] {
  const lengthM = lastOrZero(trace.atM);
  const along = placesEvery(trace, lengthM, STEP_M);
  const towns: Strip['towns'][number][] = [];
  for (const [node, tags] of roads.nodes.tags) {
    const place = Object.hasOwn(PLACES, textOf(tags, 'place')) ? PLACES[textOf(tags, 'place')] : undefined;
    const name = place && labelText(tags['name']);
    if (place === undefined || name === undefined) continue;
    const lat = roads.nodes.lat[node]!;
    const lon = roads.nodes.lon[node]!;
    let nearestM = place.withinM;
    let atM: number | undefined;
    for (const each of along) {
      // a cheap look at the latitudes spares most of the sines
      if (Math.abs(each.lat - lat) * 111_000 > nearestM) continue;
      const away = distanceM(lat, lon, each.lat, each.lon);
      if (away < nearestM) {
        nearestM = away;
        atM = each.atM;
      }
    }
    if (atM !== undefined) towns.push({ atM, name, size: place.size });
  }
  return towns.sort((a, b) => a.atM - b.atM || (a.name < b.name ? -1 : 1));
}
