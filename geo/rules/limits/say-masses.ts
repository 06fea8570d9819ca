import { isFact } from '../../country/cited.ts';
import type { CountryRule } from '../../country/rule.ts';
import { sayPlated } from '../../load/weigh/say-plates.ts';
import { printKg } from '../../units/print.ts';
import type { Words } from '../words.ts';

/** A limit against the vehicle's mass or axle. Kilograms; `actualKg` where a load is given. */
export interface MassSum {
  readonly limitKg: number;
  readonly plateKg: number;
  readonly actualKg: number | undefined;
  /** limit minus what is held against it, negative: over */
  readonly spareKg: number;
}

/** @param rule the country's, where the limit is a plain mass sign */
export function sayOverPlate({ limitKg, plateKg, actualKg, spareKg }: MassSum, rule?: CountryRule): Words {
  const credit = rule === undefined ? '' : ` ${sayBasis(rule, actualKg)}`;
  return {
    say: `The limit is ${printKg(limitKg, 'down')}; the vehicle is plated at ${printKg(plateKg, 'up')}: ${printKg(-spareKg, 'up')} over the limit.${credit}`,
    advice: 'Take another road.',
  };
}

/** What the plain mass sign compares; the plate is held against it in any case. */
function sayBasis({ name, massSign }: CountryRule, actualKg: number | undefined): string {
  const loaded = actualKg === undefined ? '' : `Loaded as listed it weighs ${printKg(actualKg, 'up')}`;
  if (massSign.value === 'plated' && isFact(massSign))
    return `In ${name} the plate decides, however little it weighs today.${loaded === '' ? '' : ` ${loaded}.`}`;
  return `${loaded || 'It may weigh less today'}; that is not counted on.`;
}

/** The load is above the plate. @param plate whether the plate alone would keep the limit */
export function sayOverloaded(
  { limitKg, plateKg, actualKg, spareKg }: MassSum,
  plate: 'over too' | 'keeps it',
): Words {
  const over = plate === 'over too';
  return {
    say: `The limit is ${printKg(limitKg, 'down')}; the vehicle is ${sayPlated(plateKg, actualKg)}: ${printKg(-spareKg, 'up')} over the limit${over ? '' : ', which the plate alone would keep'}.`,
    advice: over ? 'Unload to the plate, and take another road.' : 'Unload to the plate.',
  };
}

/** @param from the card's own figure, or the plate in its stead */
export function sayUnladen(
  {
    limitKg,
    heldKg,
    spareKg,
  }: { readonly limitKg: number; readonly heldKg: number; readonly spareKg: number },
  from: 'card' | 'plate',
): Words {
  const limit = `The limit on unladen mass is ${printKg(limitKg, 'down')}`;
  if (from === 'card')
    return {
      say: `${limit}; the card gives ${printKg(heldKg, 'up')}: ${printKg(-spareKg, 'up')} over.`,
      advice: 'Take another road.',
    };
  return {
    say: `${limit}; the card does not give the unladen mass, the plate is ${printKg(heldKg, 'up')}.`,
    advice: 'Add the unladen mass to the vehicle card.',
  };
}

/** @param of a limit on single axles, or on a bogie, two axles close together */
export function sayAxle(
  { limitKg, plateKg, actualKg, spareKg }: MassSum,
  which: 'front' | 'rear',
  of: 'axle' | 'bogie',
): Words {
  const over = printKg(-spareKg, 'up');
  return {
    say: `The ${of} limit is ${printKg(limitKg, 'down')}; the ${which} axle is ${sayPlated(plateKg, actualKg)}: ${over} over the limit.${sayActual(actualKg, plateKg)}`,
    advice: of === 'bogie' ? 'It binds only if the rear axle is a double one.' : 'Take another road.',
  };
}

function sayActual(actualKg: number | undefined, plateKg: number): string {
  if (actualKg === undefined || actualKg > plateKg) return '';
  return ` It carries ${printKg(actualKg, 'up')} as listed; that is not counted on.`;
}

export function adviseMass(plateKg: number, actualKg: number | undefined): string {
  return `Find out the mass limit before driving there; the vehicle is ${sayPlated(plateKg, actualKg)}.`;
}

export function adviseAxle({ front, rear }: { readonly front: number; readonly rear: number }): string {
  return `Find out the axle limit before driving there; the plates are ${printKg(front)} front, ${printKg(rear)} rear.`;
}
