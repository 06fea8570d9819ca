import { toRad } from '../../../earth/angles.ts';
import type { Turn } from '../../../report/turn.ts';
import { CIRCLE_CLEARANCE_M, CORNER_CLEARANCE_M } from '../../corner/clearance.ts';
import { fitCorner } from '../../corner/fit-corner.ts';
import { fitCircle } from '../../corner/fit-ring.ts';
import { startInLane, swingFigures } from '../../corner/swing-figures.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';

/** The report's widths are rounded to the centimetre: a radius this near is its own. Metres. */
const SAME_M = 0.1;
/** So are its swings to the millimetre, by a radius rounded to the centimetre. Metres. */
const SAME_SWING_M = 0.002;

/**
 * The turn as this vehicle takes it. For the vehicle of the report it is the report's own, figure for figure; with the
 * rack on or off, or for the vehicle beside it, radius, room and swing are worked out anew. A bend keeps its radius, down
 * to full lock.
 */
export function refitTurn(turn: Turn, vehicle: SwingVehicle): Turn {
  const anew = fitAnew(turn, vehicle);
  const same = Math.abs(anew.rearAxleRadiusM - turn.rearAxleRadiusM) < SAME_M;
  const fit = same ? { room: turn.room, rearAxleRadiusM: turn.rearAxleRadiusM } : anew;
  const swing = swingFigures(vehicle, fit.rearAxleRadiusM, toRad(Math.min(180, turn.turnDeg)));
  const off = (now: number, was: number) => Math.abs(now - was) > SAME_SWING_M;
  if (same && !off(swing.planM, turn.swing.planM) && !off(swing.worstM, turn.swing.worstM)) return turn;
  const { start } = turn;
  return {
    ...turn,
    ...fit,
    lockFrom: vehicle.lock.from,
    // how far the widths may be off was worked out for the vehicle of the report alone
    swing: { side: turn.swing.side, ...swing, planFromM: swing.planM, planToM: swing.planM },
    ...(start ? { start: startInLane(vehicle, start.laneM, swing.planM) } : {}),
  };
}

function fitAnew(turn: Turn, vehicle: SwingVehicle): Pick<Turn, 'room' | 'rearAxleRadiusM'> {
  const { entry, exit, kerbRadiusM, circleM, bendRadiusM } = turn;
  if (bendRadiusM !== undefined) {
    const leastM = vehicle.lock.rearAxleRadiusM;
    if (turn.rearAxleRadiusM >= leastM) return turn;
    return { room: 'back up', rearAxleRadiusM: leastM };
  }
  if (circleM !== undefined) return fitCircle({ vehicle, circleM, clearanceM: CIRCLE_CLEARANCE_M });
  const turnRad = toRad(turn.turnDeg);
  return fitCorner({ vehicle, turnRad, entry, exit, kerbRadiusM, clearanceM: CORNER_CLEARANCE_M });
}
