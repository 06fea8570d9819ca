import type { RoadCosts } from '../price/road-costs.ts';
import type { Laying } from './laying.ts';
import type { PlanStop } from './leg-parts.ts';

/** Service roads on which a vehicle cannot be expected to turn, or must not stand. */
const NO_GROUND = /^(alley|drive-through|emergency_access|bus)$/;

/**
 * The same places where the vehicle may turn round at stops between that lie on a site's own road: a campsite's, a car
 * park's, a yard's. How much room there is nothing tells: the check of the drive says what such a turn takes. On a street
 * it may not: there, room has to be mapped.
 */
export function withTurns(laying: Laying): Laying {
  const { costs } = laying.base.field;
  const stops = laying.stops.map((stop, i): PlanStop => {
    const isBetween = i > 0 && i + 1 < laying.stops.length;
    return isBetween && stop.stop && isSiteGround(costs, stop) ? { ...stop, turns: true } : stop;
  });
  return stops.some(({ turns }) => turns === true) ? { ...laying, stops } : laying;
}

/** Whether a place lies on a road that serves a site, with ground beside it. */
export function isSiteGround({ graph, judge }: RoadCosts, { directed }: PlanStop): boolean {
  const [first] = directed;
  if (first === undefined) return false;
  const { highway, service } = judge.tagsOf(graph.way[first >> 1]!);
  return highway === 'service' && !NO_GROUND.test(service ?? '');
}
