import { toRad } from '../../../earth/angles.ts';
import { given } from '../../../given.ts';
import type { Turn } from '../../../report/turn.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Scene } from '../scene/scene.ts';
import type { Draft } from './draft.ts';
import { mirrored } from './mirror.ts';
import { refitTurn } from './refit-turn.ts';
import { sceneOf } from './scene-of.ts';
import { LANE_LEAST_M, type SteadyArc } from './steady-arc.ts';
import { draftCorner } from './turn-corner.ts';
import { draftAcrossRoad, draftRing } from './turn-ring.ts';

/** Across a mini-roundabout's dome, half of it. Metres, from memory. */
const DOME_M = 2;
/** A turn back within less than this is made between a road's two kerbs, no turning place. Metres; judgement. */
const ROAD_MOST_M = 11;

/** How a turn of a drive may be driven in its lesson: as its row judged it, or with the wheel hard over. */
export const WHEELS = ['the sweep that fits', 'full lock'] as const;
export type Wheel = (typeof WHEELS)[number];

/**
 * A turn of a checked drive with its own geometry, the rear axle on the radius that fits (full lock where none does).
 * @param wheel `full lock`: the same turn with the wheel hard over instead
 */
export function driveTurnScene(
  turn: Turn,
  vehicle: SwingVehicle,
  wheel: Wheel = 'the sweep that fits',
): Scene {
  const judged = refitTurn(turn, vehicle);
  const isHarder = wheel === 'full lock' && judged.room !== 'back up';
  const driven = isHarder ? atFullLock(judged, vehicle) : judged;
  const scene: Scene = {
    ...sceneOf('drive-turn', vehicle, draftTurn(driven, vehicle)),
    turn: driven,
    ...(isHarder && { wheel: 'full lock' as const }),
  };
  return turn.side === 'right' ? mirrored(scene) : scene;
}

/** The turn in the room it takes, with the figures of full lock for those of the sweep that fits. */
function atFullLock(turn: Turn, vehicle: SwingVehicle): Turn {
  const { worstM, worstFromM, worstToM } = turn.swing;
  return {
    ...turn,
    rearAxleRadiusM: vehicle.lock.rearAxleRadiusM,
    swing: { ...turn.swing, planM: worstM, planFromM: worstFromM, planToM: worstToM },
  };
}

/** A turn of a drive with its own angle, widths and kerb; drawn turning left, the rear axle on the fitted radius. */
function draftTurn(turn: Turn, vehicle: SwingVehicle): Draft {
  const arc: SteadyArc = {
    vehicle,
    // a rounding error tighter than the lock cannot be driven
    radiusM: Math.max(turn.rearAxleRadiusM, vehicle.lock.rearAxleRadiusM),
    turnRad: toRad(turn.turnDeg),
  };
  const { bendRadiusM, circleM } = turn;
  if (bendRadiusM !== undefined) return draftBend(arc, turn, bendRadiusM);
  if (circleM === undefined) return draftCorner(arc, turn);
  if (turn.kind === 'u-turn') {
    if (circleM < ROAD_MOST_M) return draftAcrossRoad(arc, circleM);
    return draftRing(arc, { outerM: circleM / 2 });
  }
  if (turn.kind !== 'roundabout')
    return draftRing(arc, { outerM: circleM / 2, island: { role: 'dome', radiusM: DOME_M } });
  const islandM = circleM / 2 - turn.entry.roadM;
  return draftRing(arc, {
    outerM: circleM / 2,
    ...(islandM < 1 ? {} : { island: { role: 'island', radiusM: islandM } }),
  });
}

function draftBend(arc: SteadyArc, { entry, exit }: Turn, centreM: number): Draft {
  const road = entry.roadM < exit.roadM ? entry : exit;
  const lanes = road.laneM < road.roadM - LANE_LEAST_M;
  return draftRing(arc, {
    outerM: centreM + road.roadM / 2,
    innerM: centreM - road.roadM / 2,
    ...given({ laneLineM: lanes ? centreM : undefined }),
  });
}
