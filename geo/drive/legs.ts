import { distanceM } from '../earth/sphere.ts';
import type { Leg, OffMap, Stretch } from './drive.ts';
import type { RoadGraph } from './match/graph/graph.ts';
import type { Piece } from './match/graph/path.ts';
import { alongWay, type Place } from './match/graph/place.ts';

const SAME_PLACE_M = 1e-6;

/**
 * Pieces of edges joined to runs of one way in one direction, laid along the drive from `startM` on.
 * A closed way driven past its first node begins a new stretch there, so the metres along the way never jump.
 */
export function stretchesOf(pieces: readonly Piece[], startM: number, graph: RoadGraph): Stretch[] {
  const stretches: Stretch[] = [];
  let fromM = startM;
  for (const piece of pieces) {
    const way = graph.way[piece.directed >> 1]!;
    const forward = piece.directed % 2 === 0;
    const alongFromM = alongWay(graph, piece.directed, piece.fromM);
    const alongToM = alongWay(graph, piece.directed, piece.toM);
    const toM = fromM + (piece.toM - piece.fromM);
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

/** Where along the drive a leg ends. */
export function endOf(leg: Leg): number {
  return leg.kind === 'gap' ? leg.atM : leg.toM;
}
