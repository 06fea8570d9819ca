import { distanceM, type Place } from '../../earth/sphere.ts';
import { alongWay } from '../../graph/place-on-edge.ts';
import type { RoadEdges } from '../../graph/road-edges.ts';
import type { OffMap, Stretch } from '../drive.ts';
import type { EdgePart } from './trace-paths.ts';

const SAME_PLACE_M = 1e-6;

/**
 * Parts of edges joined to stretches of one way in one direction, laid along the drive from `startM` on.
 * A closed way driven past its first node begins a new stretch there, so the metres along the way never jump.
 */
export function stretchesOf(parts: readonly EdgePart[], startM: number, edges: RoadEdges): Stretch[] {
  const stretches: Stretch[] = [];
  let fromM = startM;
  for (const part of parts) {
    const way = edges.way[part.directed >> 1]!;
    const forward = part.directed % 2 === 0;
    const alongFromM = alongWay(edges, part.directed, part.fromM);
    const alongToM = alongWay(edges, part.directed, part.toM);
    const toM = fromM + (part.toM - part.fromM);
    const last = stretches.at(-1);
    const goesOn =
      last?.way === way && last.forward === forward && Math.abs(last.alongToM - alongFromM) < SAME_PLACE_M;
    if (last !== undefined && goesOn) stretches[stretches.length - 1] = { ...last, alongToM, toM };
    else stretches.push({ kind: 'stretch', way, forward, alongFromM, alongToM, fromM, toM });
    fromM = toM;
  }
  return stretches;
}

/** A leg off the map through the given places; undefined when they are all one place. */
export function offMapLeg(places: readonly Place[], fromM: number): OffMap | undefined {
  let lengthM = 0;
  places.forEach((place, i) => {
    const before = places[i - 1];
    if (before !== undefined) lengthM += distanceM(before.lat, before.lon, place.lat, place.lon);
  });
  if (lengthM === 0) return undefined;
  return {
    kind: 'offMap',
    fromM,
    toM: fromM + lengthM,
    lat: places.map((place) => place.lat),
    lon: places.map((place) => place.lon),
  };
}
