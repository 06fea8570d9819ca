import type { Drive, Leg } from '../../../geo/match/drive.ts';
import { nodesAlong, pointAt } from '../../../geo/match/drive-place.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { distanceM } from '../../../geo/route/measure.ts';
import type { DriveView, LegView } from '../../contract/views.ts';

/** A centimetre on the ground, and a centimetre along the drive. */
const DEGREES = 1e7;
const METRES = 100;

/** The drive's legs as the page draws them: every node the drive passes, with its distance. */
export function viewLegs(drive: Drive, roads: Roads): LegView[] {
  return drive.legs.map((leg) => viewLeg(leg, drive, roads));
}

function viewLeg(leg: Leg, drive: Drive, roads: Roads): LegView {
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
      const lon = leg.lon[i] as number;
      if (i > 0) atM += distanceM(leg.lat[i - 1] as number, leg.lon[i - 1] as number, lat, lon);
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
    if (atM > fromM && atM < toM) add(roads.nodes.lat[node] as number, roads.nodes.lon[node] as number, atM);
  if (last) add(last.lat, last.lon, toM);
  const tags = roads.ways.tags[leg.way] ?? {};
  return {
    kind: 'stretch',
    fromM,
    toM,
    way: roads.ways.id[leg.way] as number,
    forward: leg.forward,
    class: tags['highway'] ?? (tags['route'] === 'ferry' ? 'ferry' : 'unknown'),
    ...(tags['name'] === undefined ? {} : { name: tags['name'] }),
    ...(tags['ref'] === undefined ? {} : { ref: tags['ref'] }),
    line,
    alongM,
  };
}

/** How much of a drive lies on roads, off the map, and on roads that were guessed. */
export function matchLengths(drive: Drive): DriveView['match'] {
  const sum = { drivenM: 0, offMapM: 0, guessedM: 0 };
  for (const leg of drive.legs) {
    if (leg.kind === 'stretch') sum.drivenM += leg.toM - leg.fromM;
    if (leg.kind === 'offMap') sum.offMapM += leg.toM - leg.fromM;
  }
  for (const span of drive.guessed) sum.guessedM += span.toM - span.fromM;
  return sum;
}
