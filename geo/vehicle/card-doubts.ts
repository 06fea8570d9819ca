import { KG_PER_POUND } from '../units/exact.ts';
import type { VehicleCard } from './card.ts';
import { CATEGORY_B_KG } from './licence.ts';
import { type LockDoubt, lockDoubts } from './lock/lock-doubts.ts';

/** Rear overhang beyond this share of the wheelbase: gov.uk, "Extending a vehicle's length behind its rear axle" (2010). */
const OVERHANG_SHARE = 0.6;
/** A centimetre of reading is no overhang. */
const READING_M = 0.01;
/** Widest and longest motor vehicle in Great Britain: SI 1986/1078 regulations 7 and 8. */
export const WIDEST_M = 2.55;
export const LONGEST_M = 12;
/** Above it a height notice stands in the cab: SI 1986/1078 regulation 10, as handbooks quote it. */
export const NOTICE_M = 3;
/** A body wider than a van's stands on a chassis, and no lower than this: common practice, no source. */
const CHASSIS_BODY = { widerThanM: 2.15, leastHeightM: 2.6 };
/** Plates of axles add up to a little more than the gross plate: common practice, no source. */
const AXLES_SHARE = 1.5;
/** A short vehicle has no heavier plate: common practice, no source. */
const HEAVY = { kg: 7500, shorterThanM: 8 };
/** Plates in kilograms are whole fifties: a figure that is one in pounds, and none as it stands, was given in pounds. */
const POUNDS_PLATE = { stepKg: 50, missesKg: 0.25 };

/** What a careful host would ask about a card. `share` is a fraction of the wheelbase. */
export type CardDoubt =
  | LockDoubt
  | { readonly kind: 'long overhang'; readonly share: number; readonly withRack: boolean }
  /** metres; what was likely meant, where a metre was left out */
  | {
      readonly kind: 'low for its body';
      readonly heightM: number;
      readonly widthM: number;
      readonly meantM: number | undefined;
    }
  /** the gross plate as typed, and what so many pounds are */
  | { readonly kind: 'gross in pounds'; readonly figure: number; readonly kg: number }
  | {
      readonly kind:
        | 'wide body'
        | 'long vehicle'
        | 'height notice'
        | 'axle plates below gross'
        | 'axle plate above gross'
        | 'axle plates far above gross'
        | 'unladen above gross'
        | 'above a car licence'
        | 'axle over when empty'
        | 'gross over when empty'
        | 'no folded width'
        | 'no turning circle';
    };

/** What is doubtful about a card, none of it a refusal. */
export function cardDoubts(card: VehicleCard): CardDoubt[] {
  return [...sizeDoubts(card), ...lockDoubts(card), ...massDoubts(card), ...missingDoubts(card)];
}

function sizeDoubts(card: VehicleCard): CardDoubt[] {
  const rackM = card.rack?.fitted ? card.rack.lengthM : 0;
  const share = (card.rearOverhangM + rackM) / card.wheelbaseM;
  const found: CardDoubt[] = lowForBody(card);
  if (share > OVERHANG_SHARE + READING_M / card.wheelbaseM)
    found.push({ kind: 'long overhang', share, withRack: rackM > 0 });
  if (card.widthM > WIDEST_M) found.push({ kind: 'wide body' });
  if (card.lengthM + rackM > LONGEST_M) found.push({ kind: 'long vehicle' });
  if (card.heightM > NOTICE_M) found.push({ kind: 'height notice' });
  return found;
}

/** A height that no such vehicle has would clear bridges that it does not pass. */
function lowForBody({ heightM, widthM }: VehicleCard): CardDoubt[] {
  const isLow = heightM < widthM || (widthM > CHASSIS_BODY.widerThanM && heightM < CHASSIS_BODY.leastHeightM);
  if (!isLow) return [];
  const isMetreShort = heightM + 1 >= CHASSIS_BODY.leastHeightM;
  return [{ kind: 'low for its body', heightM, widthM, meantM: isMetreShort ? heightM + 1 : undefined }];
}

/** What the gross plate would be if it had been read in pounds. */
function grossInPounds({ grossKg, lengthM }: VehicleCard): CardDoubt[] {
  const kg = grossKg * KG_PER_POUND;
  const { stepKg, missesKg } = POUNDS_PLATE;
  const isPlate = Math.abs(kg - Math.round(kg / stepKg) * stepKg) <= missesKg && grossKg % 10 !== 0;
  const isHeavy = grossKg > HEAVY.kg && lengthM < HEAVY.shorterThanM;
  return isPlate || isHeavy ? [{ kind: 'gross in pounds', figure: grossKg, kg: Math.round(kg) }] : [];
}

function massDoubts(card: VehicleCard): CardDoubt[] {
  const { axleKg, grossKg, unladenKg, runningOrder: empty } = card;
  const found = grossInPounds(card);
  if (unladenKg !== undefined && unladenKg > grossKg) found.push({ kind: 'unladen above gross' });
  if (axleKg.front + axleKg.rear > grossKg * AXLES_SHARE) found.push({ kind: 'axle plates far above gross' });
  if (axleKg.front + axleKg.rear < grossKg) found.push({ kind: 'axle plates below gross' });
  if (Math.max(axleKg.front, axleKg.rear) > grossKg) found.push({ kind: 'axle plate above gross' });
  if (grossKg > CATEGORY_B_KG) found.push({ kind: 'above a car licence' });
  if (empty === undefined) return found;
  if (empty.frontKg > axleKg.front || empty.rearKg > axleKg.rear)
    found.push({ kind: 'axle over when empty' });
  if (empty.frontKg + empty.rearKg > grossKg) found.push({ kind: 'gross over when empty' });
  return found;
}

function missingDoubts(card: VehicleCard): CardDoubt[] {
  const found: CardDoubt[] = [];
  if (card.widthMirrorsFoldedM === undefined) found.push({ kind: 'no folded width' });
  const circles = [card.rearAxleRadiusMinM, card.turningCircleM, card.turningCircleWallM, card.measured];
  if (circles.every((figure) => figure === undefined)) found.push({ kind: 'no turning circle' });
  return found;
}
