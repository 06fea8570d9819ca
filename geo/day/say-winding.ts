import { printRun } from '../units/print.ts';
import { SLOPE_OVER_M } from './file-heights.ts';
import type { Winding } from './winding.ts';

export function sayWinding({ fromM, toM, turnDegPerKm, ...slopes }: Winding): string {
  return `Empty the cassette before here: the road winds for the next ${printRun(toM - fromM)}, turning ${Math.round(turnDegPerKm / 10) * 10}° on each kilometre. ${saySlopes(slopes)}.`;
}

function saySlopes({ steepestPercent, slopesFrom }: Pick<Winding, 'steepestPercent' | 'slopesFrom'>): string {
  if (steepestPercent === undefined)
    return 'How steep it is, neither the map nor the heights in the drive’s file tell';
  const slope = `${Math.round(steepestPercent)} %`;
  return slopesFrom === 'map'
    ? `Slopes up to ${slope} are mapped there`
    : `No slope is mapped there: by the heights in the drive’s file, smoothed over ${SLOPE_OVER_M} m, they reach ${slope}`;
}
