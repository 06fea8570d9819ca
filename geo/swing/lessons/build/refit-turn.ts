import { toRad } from '../../../earth/angles.ts';
import type { Turn } from '../../../report/turn.ts';
import { CIRCLE_CLEARANCE_M, CORNER_CLEARANCE_M } from '../../corner/clearance.ts';
import { fitCorner } from '../../corner/fit-corner.ts';
import { fitCircle } from '../../corner/fit-ring.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';

/** The report's widths are rounded to the centimetre: a radius this near is its own. Metres. */
const SAME_M = 0.1;

/**
 * The turn as this vehicle takes it. For the vehicle of the report it is the report's own; with the rack on or off, or
 * for the vehicle beside it, the radius and the room are fitted anew. A bend keeps its radius, down to full lock.
 */
export function refitTurn(turn: Turn, vehicle: SwingVehicle): Turn {
  const fit = fitAnew(turn, vehicle);
  if (Math.abs(fit.rearAxleRadiusM - turn.rearAxleRadiusM) < SAME_M) return turn;
  return { ...turn, ...fit };
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
