import type { Drive, Leg } from '../../../geo/drive/drive.ts';
import { nameRoad } from '../../../geo/drive/name-road.ts';
import { nodesAlong } from '../../../geo/drive/nodes-along.ts';
import { pointAt } from '../../../geo/drive/point-at.ts';
import { distanceM } from '../../../geo/earth/sphere.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import type { FollowedLeg } from '../../contract/followed-drive.ts';

/** A centimetre on the ground, and a centimetre along the drive. */
const DEGREES = 1e7;
const METRES = 100;

/** The drive's legs as the page draws them: every node the drive passes, with its distance. */
export function legsForPage(drive: Drive, roads: Roads): FollowedLeg[] {
  return drive.legs.map((leg) => legForPage(leg, drive, roads));
}

function legForPage(leg: Leg, drive: Drive, roads: Roads): FollowedLeg {
  const line: number[] = [];
  const alongM: number[] = [];
  const add = (lat: number, lon: number, atM: number) => {
    line.push(Math.round(lat * DEGREES) / DEGREES, Math.round(lon * DEGREES) / DEGREES);
    alongM.push(Math.round(atM * METRES) / METRES);
  };
  if (leg.kind === 'gap') {
    add(leg.from.lat, leg.from.lon, leg.atM);
    add(leg.to.lat, leg.to.lon, leg.atM);
    return { kind: 'gap', fromM: leg.atM, toM: leg.atM, line, alongM };
  }
  const { fromM, toM } = leg;
  if (leg.kind === 'offMap') {
    let atM = fromM;
    leg.lat.forEach((lat, i) => {
      const lon = leg.lon[i]!;
      if (i > 0) atM += distanceM(leg.lat[i - 1]!, leg.lon[i - 1]!, lat, lon);
      add(lat, lon, Math.min(atM, toM));
    });
    return { kind: 'offMap', fromM, toM, line, alongM };
  }
  // the first and last place need not be nodes; asked for on this leg alone, since two legs share their ends
  const only = { ...drive, legs: [leg] };
  const first = pointAt(only, roads, fromM);
  const last = pointAt(only, roads, toM);
  if (first) add(first.lat, first.lon, fromM);
  for (const { node, atM } of nodesAlong(leg, roads))
    if (atM > fromM && atM < toM) add(roads.nodes.lat[node]!, roads.nodes.lon[node]!, atM);
  if (last) add(last.lat, last.lon, toM);
  return {
    kind: 'stretch',
    fromM,
    toM,
    way: roads.ways.id[leg.way]!,
    forward: leg.forward,
    ...nameRoad(roads, leg.way),
    line,
    alongM,
  };
}
