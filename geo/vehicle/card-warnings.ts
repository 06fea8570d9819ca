import type { VehicleCard } from './card.ts';
import { type CardDoubt, cardDoubts, LONGEST_M, NOTICE_M, WIDEST_M } from './card-doubts.ts';
import { CATEGORY_B_KG } from './licence.ts';
import { sayLockDoubt } from './lock/lock-doubts.ts';

/** What a careful host would ask about this card: sentences, none of them a refusal. */
export function cardWarnings(card: VehicleCard): string[] {
  return cardDoubts(card).map(sayCardDoubt);
}

function sayCardDoubt(doubt: CardDoubt): string {
  switch (doubt.kind) {
    case 'long overhang':
      return `The rear overhang${doubt.withRack ? ' with the rack' : ''} is ${Math.round(doubt.share * 100)} % of the wheelbase; British guidance asks for at most 60 %. Measure again; expect a wide tail swing.`;
    case 'wide body':
      return `The body is wider than ${WIDEST_M} m, the most allowed in many countries. Are the mirrors in it?`;
    case 'long vehicle':
      return `Longer than ${LONGEST_M} m, the most allowed for a motor vehicle.`;
    case 'height notice':
      return `Taller than ${NOTICE_M} m: in Great Britain a height notice belongs in the cab.`;
    case 'axle plates below gross':
      return 'The axle plates add up to less than the gross plate. Read the plate again.';
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
      return sayLockDoubt(doubt);
    case 'no turning circle':
      return 'No turning circle is given.';
  }
}
