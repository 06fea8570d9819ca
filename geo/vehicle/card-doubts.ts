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

/** What a careful host would ask about a card. `share` is a fraction of the wheelbase. */
export type CardDoubt =
  | LockDoubt
  | { readonly kind: 'long overhang'; readonly share: number; readonly withRack: boolean }
  | {
      readonly kind:
        | 'wide body'
        | 'long vehicle'
        | 'height notice'
        | 'axle plates below gross'
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
  const found: CardDoubt[] = [];
  if (share > OVERHANG_SHARE + READING_M / card.wheelbaseM)
    found.push({ kind: 'long overhang', share, withRack: rackM > 0 });
  if (card.widthM > WIDEST_M) found.push({ kind: 'wide body' });
  if (card.lengthM + rackM > LONGEST_M) found.push({ kind: 'long vehicle' });
  if (card.heightM > NOTICE_M) found.push({ kind: 'height notice' });
  return found;
}

function massDoubts({ axleKg, grossKg, runningOrder: empty }: VehicleCard): CardDoubt[] {
  const found: CardDoubt[] = [];
  if (axleKg.front + axleKg.rear < grossKg) found.push({ kind: 'axle plates below gross' });
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
