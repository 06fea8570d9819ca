import { METRES_PER_MILE } from '../units/exact.ts';
import { inUnits, lengthIn, type Units } from '../units/in-units.ts';
import { SLOPE_OVER_M } from './file-heights.ts';
import type { Winding } from './winding.ts';

const KM_PER_MILE = METRES_PER_MILE / 1000;

export function sayWinding({ fromM, toM, turnDegPerKm, ...slopes }: Winding, units: Units): string {
  const turning = inUnits(
    units,
    `${Math.round(turnDegPerKm / 10) * 10}° on each kilometre`,
    `${Math.round((turnDegPerKm * KM_PER_MILE) / 10) * 10}° on each mile`,
  );
  return `Empty the cassette before here: the road winds for the next ${lengthIn(units, toM - fromM)}, turning ${turning}. ${saySlopes(slopes, units)}.`;
}

function saySlopes(
  { steepestPercent, slopesFrom }: Pick<Winding, 'steepestPercent' | 'slopesFrom'>,
  units: Units,
): string {
  if (steepestPercent === undefined)
    return 'How steep it is, neither the map nor the heights in the drive’s file tell';
  const slope = `${Math.round(steepestPercent)} %`;
  return slopesFrom === 'map'
    ? `Slopes up to ${slope} are mapped there`
    : `No slope is mapped there: by the heights in the drive’s file, smoothed over ${lengthIn(units, SLOPE_OVER_M)}, they reach ${slope}`;
}
