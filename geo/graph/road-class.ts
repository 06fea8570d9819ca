import { type Tags, WAY_KIND } from '../roads/roads.ts';
import { RANK, rankOf } from '../tags/road-class.ts';

/**
 * How readily a motor vehicle is thought to be on a way when the positions alone do not tell.
 * A guide for the match, never a bar: access tags play no part, and a drive on a footpath is followed there.
 */
export const ROAD_CLASS = { main: 0, minor: 1, service: 2, track: 3, path: 4, ferry: 5 } as const;
type RoadClass = (typeof ROAD_CLASS)[keyof typeof ROAD_CLASS];

/** The class of a way by its WAY_KIND and `highway` alone; what is unknown counts as a path. */
export function roadClass(kind: number, tags: Tags): RoadClass {
  if (kind === WAY_KIND.ferry) return ROAD_CLASS.ferry;
  const rank = rankOf(tags['highway']);
  if (rank <= RANK.tertiary) return ROAD_CLASS.main;
  if (rank <= RANK.residential) return ROAD_CLASS.minor;
  if (rank === RANK.service) return ROAD_CLASS.service;
  return rank === RANK.track ? ROAD_CLASS.track : ROAD_CLASS.path;
}
