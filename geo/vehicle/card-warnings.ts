import type { VehicleCard } from './card.ts';

/** Rear overhang beyond this share of the wheelbase: gov.uk, "Extending a vehicle's length behind its rear axle" (2010). */
const OVERHANG_SHARE = 0.6;
/** Widest and longest motor vehicle in Great Britain: SI 1986/1078 regulations 7 and 8. */
const WIDEST_M = 2.55;
const LONGEST_M = 12;
/** Above it a height notice stands in the cab: SI 1986/1078 regulation 10, as handbooks quote it. */
const NOTICE_M = 3;
/** Licence category B ends here: Directive 2006/126/EC; national rules differ. */
const CATEGORY_B_KG = 3500;

/** What a careful host would ask about this card: sentences, none of them a refusal. */
export function cardWarnings(card: VehicleCard): string[] {
  const rackM = card.rack?.fitted ? card.rack.lengthM : 0;
  const overhangM = card.rearOverhangM + rackM;
  const share = overhangM / card.wheelbaseM;
  const axlesKg = card.axleKg.front + card.axleKg.rear;
  const orderKg = card.runningOrder ? card.runningOrder.frontKg + card.runningOrder.rearKg : 0;
  const rules: readonly (readonly [boolean, string])[] = [
    [
      // a centimetre of reading is no overhang
      share > OVERHANG_SHARE + 0.01 / card.wheelbaseM,
      `The rear overhang${rackM > 0 ? ' with the rack' : ''} is ${Math.round(share * 100)} % of the wheelbase; British guidance asks for at most 60 %. Measure again; expect a wide tail swing.`,
    ],
    [
      card.widthM > WIDEST_M,
      'The body is wider than 2.55 m, the most allowed in many countries. Are the mirrors in it?',
    ],
    [card.lengthM + rackM > LONGEST_M, 'Longer than 12 m, the most allowed for a motor vehicle.'],
    [card.heightM > NOTICE_M, 'Taller than 3 m: in Great Britain a height notice belongs in the cab.'],
    [axlesKg < card.grossKg, 'The axle plates add up to less than the gross plate. Read the plate again.'],
    [
      card.grossKg > CATEGORY_B_KG,
      'Plated above 3500 kg: an ordinary car licence may not do, and other limits bind.',
    ],
    [
      card.runningOrder !== undefined &&
        (card.runningOrder.frontKg > card.axleKg.front || card.runningOrder.rearKg > card.axleKg.rear),
      'In running order an axle already weighs more than its plate.',
    ],
    [orderKg > card.grossKg, 'In running order it already weighs more than its gross plate.'],
    [
      card.widthMirrorsFoldedM === undefined,
      'The width over folded mirrors is not given; the body alone stands for it at posts.',
    ],
    [
      card.rearAxleRadiusMinM === undefined &&
        card.turningCircleM === undefined &&
        card.turningCircleWallM === undefined,
      'No turning circle is given.',
    ],
  ];
  return rules.filter(([holds]) => holds).map(([, sentence]) => sentence);
}
