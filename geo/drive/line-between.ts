import { leastWhere } from '../earth/bisect.ts';
import type { Roads } from '../roads/roads.ts';
import type { Drive } from './drive.ts';
import { endOf } from './end-of.ts';
import { nodesAlong } from './nodes-along.ts';
import { placeDriven } from './point-at.ts';

/**
 * The drive's line between two distances along it, as [longitude, latitude] pairs: along the roads as they are drawn,
 * off the map as the route is drawn. Gaps are jumped.
 */
export function lineBetween(drive: Drive, roads: Roads, fromM: number, toM: number): [number, number][] {
  const line: [number, number][] = [];
  const add = (lat: number, lon: number) => {
    const last = line.at(-1);
    if (last === undefined || last[0] !== lon || last[1] !== lat) line.push([lon, lat]);
  };
  const addAt = (atM: number) => {
    const { lat, lon } = placeDriven(drive, roads, atM);
    add(lat, lon);
  };
  addAt(fromM);
  const { legs } = drive;
  // a drive has many legs and as many findings: only those between are looked at
  for (let i = leastWhere(0, legs.length, (at) => endOf(legs[at]!) > fromM); i < legs.length; i++) {
    const leg = legs[i]!;
    if (leg.kind === 'gap') continue;
    if (leg.fromM >= toM) break;
    if (leg.kind === 'offMap') {
      leg.lat.forEach((lat, i) => {
        add(lat, leg.lon[i]!);
      });
      continue;
    }
    for (const { node, atM } of nodesAlong(leg, roads))
      if (atM > fromM && atM < toM) add(roads.nodes.lat[node]!, roads.nodes.lon[node]!);
  }
  addAt(toM);
  return line;
}
