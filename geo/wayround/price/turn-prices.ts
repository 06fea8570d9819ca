import { ruleFor } from '../../country/table.ts';
import { toRad, wrapRad } from '../../earth/angles.ts';
import { swingVehicleOf } from '../../swing/swing-vehicle.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { envelopeOf } from '../../vehicle/envelope.ts';
import { roomAcrossM } from '../graph/lay-turns.ts';
import { isTurningPlace } from '../graph/split-nodes.ts';
import { PRICES } from './prices.ts';
import type { RoadCosts } from './road-costs.ts';

/** Least angle of a turn off one road into another, as in drive/turns. */
const LEAST_TURN_RAD = toRad(40);

/** Seconds, in tenths, of a turn for its own sake: slowing down, waiting for a gap. */
export function turnTenths(costs: RoadCosts, from: number, to: number): number {
  const { graph } = costs;
  if (graph.way[from >> 1] === graph.way[to >> 1]) return 0;
  // clockwise is to the right
  const turn = wrapRad(costs.headingOut(to) - costs.headingIn(from));
  if (Math.abs(turn) < LEAST_TURN_RAD) return 0;
  const side = ruleFor(costs.judge.countryAt(costs.judge.placeOf(graph.head[from]!))).rule.driveSide.value;
  const across = turn > 0 === (side === 'left');
  return 10 * (across ? PRICES.turnS + PRICES.acrossS : PRICES.turnS);
}

/** Across the circle that the vehicle's outer front corner draws with the wheels hard over, metres. */
export function circleAcrossM(card: VehicleCard): number {
  const { rearAxleRadiusM } = swingVehicleOf(card).lock;
  const outM = rearAxleRadiusM + envelopeOf(card).bodyWidthM / 2;
  return 2 * Math.hypot(outM, card.wheelbaseM + card.frontOverhangM);
}

/** Whether the vehicle may turn round at the end of an edge: where the map says so, or the road is wide enough. */
export function hasRoomToTurn(costs: RoadCosts, directed: number, circleM: number): boolean {
  const { graph, roads } = costs;
  if (isTurningPlace(roads.nodes.tags.get(graph.head[directed]!))) return true;
  return (roomAcrossM(costs.judge.tagsOf(graph.way[directed >> 1]!)) ?? 0) >= circleM;
}
