import { type Tags, WAY_KIND } from '../roads/roads.ts';

/**
 * How readily a motor vehicle is thought to be on a way when the positions alone do not tell.
 * A guide for the match, never a bar: access tags play no part, and a drive on a footpath is followed there.
 */
export const ROAD_CLASS = { main: 0, minor: 1, service: 2, track: 3, path: 4, ferry: 5 } as const;
type RoadClass = (typeof ROAD_CLASS)[keyof typeof ROAD_CLASS];

const MAIN = /^(motorway|trunk|primary|secondary|tertiary)(_link)?$/;
const MINOR = /^(unclassified|residential|living_street|road)$/;

/** The class of a way by its WAY_KIND and `highway` alone; what is unknown counts as a path. */
export function roadClass(kind: number, tags: Tags): RoadClass {
  if (kind === WAY_KIND.ferry) return ROAD_CLASS.ferry;
  const highway = tags['highway'] ?? '';
  if (MAIN.test(highway)) return ROAD_CLASS.main;
  if (MINOR.test(highway)) return ROAD_CLASS.minor;
  if (highway === 'service') return ROAD_CLASS.service;
  if (highway === 'track') return ROAD_CLASS.track;
  return ROAD_CLASS.path;
}
