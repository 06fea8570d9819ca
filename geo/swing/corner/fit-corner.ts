import type { Turn } from '../../report/turn.ts';
import type { SwingVehicle } from '../swing-vehicle.ts';
import { type CornerRoom, spareAt } from './corner-room.ts';

/** The easiest way round that one steady lock allows. */
export interface Fit {
  /** `back up`: no single sweep of the wheel gets round, so it may take backing up once */
  readonly room: Turn['room'];
  /** largest radius of the rear-axle centre, metres; full lock's for backing up */
  readonly rearAxleRadiusM: number;
}

/** Width of a road at the corner, metres from the inner kerb's line: to the outer edge of what is ours, and of the road. */
export interface CornerWidths {
  /** turning across the oncoming lane, this is the whole road: the inner kerb is on its far side */
  readonly laneM: number;
  readonly roadM: number;
}

/** A junction corner for one vehicle. Metres, radians. */
export interface Corner {
  readonly vehicle: SwingVehicle;
  /** how far the heading changes, always positive; π and more count as just under π */
  readonly turnRad: number;
  readonly entry: CornerWidths;
  readonly exit: CornerWidths;
  readonly kerbRadiusM: number;
  readonly clearanceM: number;
}

/** Radii above this are no corner: 40 m stands for "at least 40 m". */
const WIDEST_M = 40;
/** The radius found is the largest to this. */
const STEP_M = 0.001;
const MOST_TURN_RAD = Math.PI - 1e-3;

/**
 * Largest steady radius round a junction corner, at the first level that passes: own lane to own lane, own lane to the
 * whole exit, whole road to whole road; else the vehicle may have to back up once. Exact for straight, rear axle on one arc, straight.
 */
export function fitCorner(corner: Corner): Fit {
  for (const room of ['own lane', 'other lane on the exit', 'whole road'] as const) {
    const radiusM = radiusInRoomM(corner, room);
    if (radiusM !== undefined) return { room, rearAxleRadiusM: radiusM };
  }
  return { room: 'back up', rearAxleRadiusM: corner.vehicle.lock.rearAxleRadiusM };
}

/** Largest steady radius that keeps to one level of room, metres; undefined when none does. */
export function radiusInRoomM(corner: Corner, room: Exclude<Fit['room'], 'back up'>): number | undefined {
  const { vehicle, entry, exit, kerbRadiusM, clearanceM } = corner;
  return largestRadiusM({
    vehicle,
    turnRad: Math.min(corner.turnRad, MOST_TURN_RAD),
    entryM: room === 'whole road' ? entry.roadM : entry.laneM,
    exitM: room === 'own lane' ? exit.laneM : exit.roadM,
    kerbRadiusM,
    clearanceM,
  });
}

/**
 * Largest radius from 40 m down to full lock that fits, to 1 mm; undefined when none does. What fits need not be one
 * unbroken range of radii, so this goes down from the top. It leaps as far as is safe: a metre less of radius
 * gains at most 1/cos(turn/2) − 1 at the kerb (the sweep comes in by at most 1/cos(turn/2), its inner side by 1), and
 * nothing beside the straights.
 */
export function largestRadiusM(corner: CornerRoom): number | undefined {
  const { vehicle, turnRad } = corner;
  const leastM = Math.max(vehicle.lock.rearAxleRadiusM, vehicle.widthM / 2);
  const gain = 1 / Math.cos(turnRad / 2) - 1;
  for (let radiusM = Math.max(WIDEST_M, leastM); ; ) {
    const { besideM, atKerbM } = spareAt(corner, radiusM);
    if (!(besideM >= 0)) return undefined;
    if (atKerbM >= 0) return radiusM;
    if (radiusM <= leastM) return undefined;
    radiusM = Math.max(leastM, radiusM - Math.max(STEP_M, -atKerbM / gain));
  }
}
