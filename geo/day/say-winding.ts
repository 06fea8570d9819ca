import { printRun } from '../units/print.ts';
import type { Winding } from './winding.ts';

export function sayWinding({ fromM, toM, turnDegPerKm, steepestPercent }: Winding): string {
  const slopes =
    steepestPercent === undefined
      ? 'How steep it is, is not mapped'
      : `Slopes up to ${Math.round(steepestPercent)} % are mapped there`;
  return `Empty the cassette before here: the road winds for the next ${printRun(toM - fromM)}, turning ${Math.round(turnDegPerKm / 10) * 10}° on each kilometre. ${slopes}.`;
}
