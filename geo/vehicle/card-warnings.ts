import { inUnits, sizeIn, type Units } from '../units/in-units.ts';
import { printFeetInches, printKg } from '../units/print.ts';
import { lowerFirst } from '../units/text.ts';
import type { VehicleCard } from './card.ts';
import { type CardDoubt, cardDoubts, LONGEST_M, NOTICE_M, WIDEST_M } from './card-doubts.ts';
import { CATEGORY_B_KG } from './licence.ts';
import { sayLockDoubt } from './lock/lock-doubts.ts';

/** What a careful host would ask about this card: sentences, none of them a refusal. */
export function cardWarnings(card: VehicleCard, units: Units): string[] {
  return cardDoubts(card).map((doubt) => sayCardDoubt(doubt, units));
}

/** Doubts of which a wrong figure of the card is the likely cause: where they stand, the check itself may be wrong. */
const OF_A_FIGURE: ReadonlySet<CardDoubt['kind']> = new Set([
  'low for its body',
  'gross in pounds',
  'unladen above gross',
  'axle plates far above gross',
  'axle plates below gross',
  'axle over when empty',
  'gross over when empty',
]);

/** What throws a doubt on every check of this card: said wherever a check of it is told. */
export function cardCautions(card: VehicleCard, units: Units): string[] {
  return cardDoubts(card)
    .filter(({ kind }) => OF_A_FIGURE.has(kind))
    .map((doubt) => `The vehicle card: ${lowerFirst(sayCardDoubt(doubt, units))}`);
}

/** The other warnings, which leave what a check says as it is. */
export function cardRemarks(card: VehicleCard, units: Units): string[] {
  return cardDoubts(card)
    .filter(({ kind }) => !OF_A_FIGURE.has(kind))
    .map((doubt) => sayCardDoubt(doubt, units));
}

/** What has to be affirmed before such a card is kept: it would clear bridges that it does not pass. */
export function toAffirm(card: VehicleCard, units: Units): string | undefined {
  const doubt = cardDoubts(card).find(({ kind }) => kind === 'low for its body');
  return doubt && sayCardDoubt(doubt, units);
}

function sayCardDoubt(doubt: CardDoubt, units: Units): string {
  switch (doubt.kind) {
    case 'long overhang':
      return `The rear overhang${doubt.withRack ? ' with the rack' : ''} is ${Math.round(doubt.share * 100)} % of the wheelbase; British guidance asks for at most 60 %. Measure again; expect a wide tail swing.`;
    case 'low for its body': {
      const asked =
        doubt.meantM === undefined ? 'Measure again.' : `Is it ${sizeIn(units, doubt.meantM, 'nearest')}?`;
      return `A height of ${sizeIn(units, doubt.heightM, 'nearest')} is lower than such a vehicle can be with a body ${sizeIn(units, doubt.widthM, 'nearest')} wide. ${asked}`;
    }
    case 'gross in pounds':
      return `${doubt.figure} lb is ${printKg(doubt.kg)}: is the most it may weigh given in pounds? Write it in kilograms.`;
    case 'unladen above gross':
      return 'The unladen mass is more than the gross plate. Read both again.';
    case 'axle plates far above gross':
      return 'The axle plates add up to far more than the gross plate. Are they in pounds?';
    case 'wide body':
      return `The body is wider than ${sayMost(units, WIDEST_M)}, the most allowed in many countries. Are the mirrors in it?`;
    case 'long vehicle':
      return `Longer than ${sayMost(units, LONGEST_M)}, the most allowed for a motor vehicle.`;
    case 'height notice':
      return `Taller than ${sayMost(units, NOTICE_M)}: in Great Britain a height notice belongs in the cab.`;
    case 'axle plates below gross':
      return 'The axle plates add up to less than the gross plate. Read the plate again.';
    case 'axle plate above gross':
      return 'An axle plate is above the gross plate, which no vehicle has. Read the plate again.';
    case 'above a car licence':
      return `Plated above ${CATEGORY_B_KG} kg: an ordinary car licence may not do, and other limits bind.`;
    case 'axle over when empty':
      return 'Empty and ready to drive, an axle already weighs more than its plate.';
    case 'gross over when empty':
      return 'Empty and ready to drive, it already weighs more than its gross plate.';
    case 'no folded width':
      return 'The width over folded mirrors is not given; the body alone stands for it at posts.';
    case 'yard against card':
    case 'yard measures at odds':
    case 'tail mark misplaced':
      return sayLockDoubt(doubt, units);
    case 'no turning circle':
      return 'No turning circle is given.';
  }
}

/** A figure of the law: `12 m`, `39'4"`. */
function sayMost(units: Units, m: number): string {
  return inUnits(units, `${m} m`, printFeetInches(m, 'down'));
}
