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

/** A turn of a checked drive with its own geometry, the rear axle on the radius that fits (full lock where none does). */
export function driveTurnScene(turn: Turn, vehicle: SwingVehicle): Scene {
  const fitted = refitTurn(turn, vehicle);
  const scene = { ...sceneOf('drive-turn', vehicle, draftTurn(fitted, vehicle)), turn: fitted };
  return turn.side === 'right' ? mirrored(scene) : scene;
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
