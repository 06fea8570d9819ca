import { sizeIn, type Units } from '../../units/in-units.ts';
import { printTonnes } from '../../units/print.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import type { Envelope } from '../../vehicle/envelope.ts';
import { printSlope } from '../../vehicle/ground-angles.ts';
import type { Words } from '../words.ts';

/** @param name as mapped */
function called(name: string | undefined): string {
  return name === undefined ? 'A ferry' : `The ferry ${name}`;
}

/** No limit of length is mapped: what to book. */
export function sayToBook(
  name: string | undefined,
  {
    card,
    envelope,
    units,
  }: { readonly card: VehicleCard; readonly envelope: Envelope; readonly units: Units },
): Words {
  const { lengthM, mirrorsWidthM, grossKg } = envelope;
  return {
    say: `${called(name)}: no limit of length is mapped.`,
    advice: `Book as ${sizeIn(units, lengthM, 'up')} long, ${sizeIn(units, card.heightM, 'up')} high, ${sizeIn(units, mirrorsWidthM, 'up')} over mirrors, ${printTonnes(grossKg)}.`,
  };
}

/** @param tail the steepest break the tail clears, height over length; undefined: the card does not tell */
export function sayRamp(tail: number | undefined): Words {
  return {
    say:
      tail === undefined
        ? 'The ferry’s ramp changes with the water; the card does not give the clearance under the tail.'
        : `The ferry’s ramp changes with the water; the tail clears a break of ${printSlope(tail)}.`,
    advice: 'Creep on and off at a slant, passengers out, and tell the crew that the tail is long.',
  };
}

export function sayGas(name: string | undefined, gasKg: number): Words {
  return {
    say: `${called(name)} with ${gasKg} kg of gas on board.`,
    advice: 'Shut the bottles and every appliance before boarding; declare the gas where the operator asks.',
  };
}
