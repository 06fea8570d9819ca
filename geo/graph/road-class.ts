import { type Tags, WAY_KIND } from '../roads/roads.ts';
import { accessFor } from '../tags/access.ts';
import { RANK, rankOf } from '../tags/road-class.ts';

/**
 * How readily a motor vehicle is thought to be on a way when the positions alone do not tell.
 * A guide for the match, never a bar: a drive that is clearly on a footpath, or on a road closed to motor traffic,
 * is followed there.
 */
export const ROAD_CLASS = { main: 0, minor: 1, service: 2, track: 3, path: 4, ferry: 5, closed: 6 } as const;
type RoadClass = (typeof ROAD_CLASS)[keyof typeof ROAD_CLASS];

const BUSES = /^(busway|bus_guideway)$/;

/** The class of a way by its WAY_KIND, its `highway`, and whether it is closed to motor traffic; what is unknown counts as a path. */
export function roadClass(kind: number, tags: Tags): RoadClass {
  if (kind === WAY_KIND.ferry) return ROAD_CLASS.ferry;
  const built = builtAs(tags['highway']);
  return built !== ROAD_CLASS.path && isClosed(tags) ? ROAD_CLASS.closed : built;
}

function builtAs(highway: string | undefined): RoadClass {
  const rank = rankOf(highway);
  if (rank <= RANK.tertiary) return ROAD_CLASS.main;
  if (rank <= RANK.residential) return ROAD_CLASS.minor;
  if (rank === RANK.service) return ROAD_CLASS.service;
  if (rank === RANK.track) return ROAD_CLASS.track;
  return BUSES.test(highway ?? '') ? ROAD_CLASS.closed : ROAD_CLASS.path;
}

/** Closed in both directions, as a carriageway for buses is: to all, or to all that the motorhome is among. */
function isClosed(tags: Tags): boolean {
  return (
    accessFor({ tags, forward: true }).meaning === 'no' &&
    accessFor({ tags, forward: false }).meaning === 'no'
  );
}

/** Whether a class is one that motor traffic is not meant to use. */
export function isForOthers(roadClass: number): boolean {
  return roadClass === ROAD_CLASS.path || roadClass === ROAD_CLASS.closed;
}
