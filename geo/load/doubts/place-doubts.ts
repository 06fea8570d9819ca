import { printKg, printMetres } from '../../units/print.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { kindOf } from '../list/item-kind.ts';
import type { LoadItem } from '../list/load-list.ts';
import { litresIn, runningLitres } from '../places/in-tank.ts';
import { isAt, isOnRack, tailM } from '../places/stow-places.ts';

/** A tape along the vehicle is good to a few centimetres. */
const OUTSIDE_M = 0.05;
/** A locker is as long as that on either side of the place the card gives for it. */
const OFF_PLACE_M = 0.3;
const NAMED_MOST = 3;

/** What is doubtful about where things stand: off the vehicle, at no place of the card, or more than a place holds. */
export function placeWarnings(card: VehicleCard, items: readonly LoadItem[]): string[] {
  return [
    ...items.flatMap((item) => offVehicle(card, item)),
    ...offPlaces(card, items),
    ...tooFull(card, items),
  ];
}

function offVehicle(card: VehicleCard, item: LoadItem): string[] {
  const said: string[] = [];
  const behind = item.xM - tailM(card);
  const ahead = -card.frontOverhangM - item.xM;
  const rackM = card.rack?.fitted ? card.rack.lengthM : 0;
  if (behind > OUTSIDE_M && !isOnRack(item, card))
    said.push(`${quote(item)} lies ${printMetres(behind)} behind the body, and the card has no rack fitted.`);
  else if (behind > rackM + OUTSIDE_M)
    said.push(
      `${quote(item)} lies ${printMetres(behind - rackM)} behind the end of the rack. Measure its place again.`,
    );
  if (ahead > OUTSIDE_M)
    said.push(`${quote(item)} lies ${printMetres(ahead)} ahead of the vehicle. Measure its place again.`);
  return said;
}

/** The metres decide; a name that says otherwise is from another vehicle, or from a card since changed. */
function offPlaces(card: VehicleCard, items: readonly LoadItem[]): string[] {
  const places = new Map(
    [...(card.seats ?? []), ...(card.tanks ?? []), ...(card.lockers ?? [])].map(({ name, xM }) => [name, xM]),
  );
  const unknown: string[] = [];
  const elsewhere: string[] = [];
  for (const item of items) {
    const { place, xM } = item;
    if (place === undefined) continue;
    const placeM = places.get(place);
    if (place === 'rack') {
      if (card.rack?.fitted && !isOnRack(item, card))
        elsewhere.push(`${quote(item)} at the rack but with ${printMetres(xM)}`);
    } else if (placeM === undefined) unknown.push(`${quote(item)} at "${clip(place)}"`);
    else if (Math.abs(placeM - xM) > OFF_PLACE_M)
      elsewhere.push(
        `${quote(item)} at "${clip(place)}" (${printMetres(placeM)}) but with ${printMetres(xM)}`,
      );
  }
  return [
    ...(unknown.length > 0
      ? [`Listed at a place that the card does not have: ${some(unknown)}. The metres are counted.`]
      : []),
    ...(elsewhere.length > 0
      ? [`Listed at a place that lies elsewhere: ${some(elsewhere)}. The metres are counted.`]
      : []),
  ];
}

function tooFull(card: VehicleCard, items: readonly LoadItem[]): string[] {
  const said: string[] = [];
  for (const seat of card.seats ?? []) {
    const people = items.filter(
      (item) => item.place === seat.name && item.massKg > 0 && /^(person|driver)$/.test(kindOf(item)),
    );
    if (people.length > 1) said.push(`"${clip(seat.name)}" has ${people.length} people listed on it.`);
  }
  for (const locker of card.lockers ?? []) {
    const inside = items.reduce((sum, item) => sum + (isAt(item, locker, card) ? item.massKg : 0), 0);
    if (locker.limitKg !== undefined && inside > locker.limitKg + 1e-6)
      said.push(`"${locker.name}" holds ${printKg(inside, 'up')}; its limit is ${printKg(locker.limitKg)}.`);
  }
  for (const tank of card.tanks ?? []) {
    const [litres, runningL] = [litresIn(card, items, tank), runningLitres(card, tank)];
    if (litres <= tank.capacityL + 0.5) continue;
    const before = runningL > 0 ? `, ${Math.round(runningL)} l of them in the running order` : '';
    said.push(
      `"${tank.name}" is listed with ${Math.round(litres)} l${before}; it holds ${tank.capacityL} l.`,
    );
  }
  return said;
}

function some(names: readonly string[]): string {
  const more = names.length - NAMED_MOST;
  return names.slice(0, NAMED_MOST).join(', ') + (more > 0 ? `, and ${more} more` : '');
}

export function quote(item: Pick<LoadItem, 'name'>): string {
  return `"${clip(item.name)}"`;
}

function clip(name: string): string {
  return name.length > 60 ? `${name.slice(0, 60)}…` : name;
}
