import { given } from '../../given.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { RACK } from '../../vehicle/place-names.ts';
import { isPerson } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { emptyWeightLitres, litresIn } from '../places/in-tank.ts';
import { isOnRack, massAt, tailM } from '../places/stow-places.ts';
import { GAUGE_L } from '../tanks/tell-tank.ts';
import { NOISE_KG } from '../weigh/noise.ts';
import type { Doubt, Misplaced } from './doubt.ts';

/** A tape along the vehicle is good to a few centimetres. */
const OUTSIDE_M = 0.05;
/** A locker is as long as that on either side of the place the card gives for it. */
const OFF_PLACE_M = 0.3;

/** What is doubtful about where things stand: off the vehicle, at no place of the card, or more than a place holds. */
export function placeDoubts(card: VehicleCard, items: readonly LoadItem[]): Doubt[] {
  return [
    ...items.flatMap((item) => offVehicle(card, item)),
    ...offPlaces(card, items),
    ...seatDoubts(card, items),
    ...lockerDoubts(card, items),
    ...tankDoubts(card, items),
  ];
}

function offVehicle(card: VehicleCard, item: LoadItem): Doubt[] {
  const behind = item.xM - tailM(card);
  const ahead = -card.frontOverhangM - item.xM;
  const rackM = card.rack?.fitted ? card.rack.lengthM : 0;
  const { name } = item;
  if (behind > OUTSIDE_M && !isOnRack(item, card))
    return [{ kind: 'behind the body', item: name, byM: behind }];
  if (behind > rackM + OUTSIDE_M) return [{ kind: 'behind the rack', item: name, byM: behind - rackM }];
  if (ahead > OUTSIDE_M) return [{ kind: 'ahead of the vehicle', item: name, byM: ahead }];
  return [];
}

/** The metres decide; a name that says otherwise is from another vehicle, or from a card since changed. */
function offPlaces(card: VehicleCard, items: readonly LoadItem[]): Doubt[] {
  const places = new Map(
    [...(card.seats ?? []), ...(card.tanks ?? []), ...(card.lockers ?? [])].map(({ name, xM }) => [name, xM]),
  );
  const unknown: Misplaced[] = [];
  const elsewhere: Misplaced[] = [];
  for (const item of items) {
    const { name, place, xM } = item;
    if (place === undefined) continue;
    const placeM = places.get(place);
    const misplaced = { item: name, place, xM, ...given({ placeM }) };
    if (place === RACK) {
      if (card.rack?.fitted && !isOnRack(item, card)) elsewhere.push(misplaced);
    } else if (placeM === undefined) unknown.push(misplaced);
    else if (Math.abs(placeM - xM) > OFF_PLACE_M) elsewhere.push(misplaced);
  }
  return [
    ...(unknown.length > 0 ? [{ kind: 'no such place' as const, items: unknown }] : []),
    ...(elsewhere.length > 0 ? [{ kind: 'place elsewhere' as const, items: elsewhere }] : []),
  ];
}

function seatDoubts(card: VehicleCard, items: readonly LoadItem[]): Doubt[] {
  return (card.seats ?? []).flatMap(({ name }): Doubt[] => {
    const people = items.filter((item) => item.place === name && item.massKg > 0 && isPerson(item)).length;
    return people > 1 ? [{ kind: 'seat full', seat: name, people }] : [];
  });
}

function lockerDoubts(card: VehicleCard, items: readonly LoadItem[]): Doubt[] {
  return (card.lockers ?? []).flatMap((locker): Doubt[] => {
    const { name, limitKg } = locker;
    const insideKg = massAt(items, locker, card);
    if (limitKg === undefined || insideKg <= limitKg + NOISE_KG) return [];
    return [{ kind: 'locker over', locker: name, insideKg, limitKg }];
  });
}

function tankDoubts(card: VehicleCard, items: readonly LoadItem[]): Doubt[] {
  return (card.tanks ?? []).flatMap((tank): Doubt[] => {
    const { name, capacityL } = tank;
    const litres = litresIn(card, items, tank);
    if (litres <= capacityL + GAUGE_L) return [];
    return [
      { kind: 'tank over', tank: name, litres, emptyWeightL: emptyWeightLitres(card, tank), capacityL },
    ];
  });
}
