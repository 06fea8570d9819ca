import { assertNever } from '../../result.ts';
import { sizeIn, type Units } from '../../units/in-units.ts';
import { printKg, printLitres, printPercent } from '../../units/print.ts';
import { quote } from '../../units/text.ts';
import { RACK } from '../../vehicle/place-names.ts';
import { DRIVER_KG } from '../list/presets.ts';
import { WHEN } from '../tanks/say-tanks.ts';
import { LIMIT_NAME } from '../weigh/say-plates.ts';
import type { Counted, Doubt, Misplaced, OverOnTheWay } from './doubt.ts';

const NAMES = { front: 'front axle', rear: 'rear axle', gross: 'vehicle' } as const;
const HANDBOOK = 'one British builder’s handbook (2008) asks for 40 to 70 %';
const NAMED_MOST = 3;

/** A doubt in a sentence or two. */
export function sayDoubt(doubt: Doubt, units: Units): string {
  switch (doubt.kind) {
    case 'over plate':
    case 'over rack':
    case 'wheels lift':
      return sayTooMuch(doubt);
    case 'driver twice':
    case 'no driver':
    case 'water twice':
    case 'fuel twice':
    case 'litres and mass':
      return sayCount(doubt);
    case 'little in front':
      return `Only ${sayShareOf(doubt.share)}; ${HANDBOOK}. Steering and grip suffer: load further forward.`;
    case 'much in front':
      return `${sayShareOf(doubt.share)}; ${HANDBOOK}. Load further back.`;
    case 'over on the way':
      return sayOnTheWay(doubt);
    default:
      return sayPlace(doubt, units);
  }
}

type Of<K extends Doubt['kind']> = Extract<Doubt, { readonly kind: K }>;

function sayTooMuch(doubt: Of<'over plate' | 'over rack' | 'wheels lift'>): string {
  switch (doubt.kind) {
    case 'over plate':
      return `The ${NAMES[doubt.limit]} is over its plate by ${printKg(doubt.overKg, 'up')}: ${printKg(doubt.loadKg, 'up')} on ${printKg(doubt.plateKg)}.`;
    case 'over rack':
      return `The rack carries ${printKg(doubt.onKg, 'up')}, ${printKg(doubt.overKg, 'up')} more than ${doubt.limitFrom === 'card' ? 'its limit' : 'the 60 kg that are common practice; the card gives no limit of its own'}.`;
    case 'wheels lift':
      return `As listed the ${doubt.axle} wheels would lift off the ground. Check masses and places.`;
    default:
      return assertNever(doubt);
  }
}

function sayCount(
  doubt: Of<'driver twice' | 'no driver' | 'water twice' | 'fuel twice' | 'litres and mass'>,
): string {
  switch (doubt.kind) {
    case 'driver twice':
      return `${quote(doubt.item)} is listed, and the empty weight on the card holds a driver already: counted twice unless the figure is only what the driver weighs beyond ${DRIVER_KG} kg.`;
    case 'no driver':
      return `The empty weight on the card is without the driver and none is listed: add the driver, ${DRIVER_KG} kg or more.`;
    case 'water twice':
      return `${quote(doubt.item)} is listed, and the empty weight on the card holds fresh water already: counted twice. Take it out, or list as a negative mass what is drained.`;
    case 'fuel twice':
      return `${quote(doubt.item)} is listed, and the empty weight on the card holds 90 % of the fuel: count only what is beyond it.`;
    case 'litres and mass':
      return `${quote(doubt.item)}: ${printLitres(doubt.litres, 'nearest', 1)} and ${printKg(doubt.massKg)} do not go together; the mass is counted.`;
    default:
      return assertNever(doubt);
  }
}

function sayPlace(
  doubt: Of<
    | 'behind the body'
    | 'behind the rack'
    | 'ahead of the vehicle'
    | 'no such place'
    | 'place elsewhere'
    | 'seat full'
    | 'locker over'
    | 'tank over'
  >,
  units: Units,
): string {
  switch (doubt.kind) {
    case 'behind the body':
      return `${quote(doubt.item)} lies ${sizeIn(units, doubt.byM, 'up')} behind the body, and the card has no rack fitted.`;
    case 'behind the rack':
      return `${quote(doubt.item)} lies ${sizeIn(units, doubt.byM, 'up')} behind the end of the rack. Measure its place again.`;
    case 'ahead of the vehicle':
      return `${quote(doubt.item)} lies ${sizeIn(units, doubt.byM, 'up')} ahead of the vehicle. Measure its place again.`;
    case 'no such place':
      return `Listed at a place that the card does not have: ${some(doubt.items.map(({ item, place }) => `${quote(item)} at ${quote(place)}`))}. The metres are counted.`;
    case 'place elsewhere':
      return `Listed at a place that lies elsewhere: ${some(doubt.items.map((each) => sayElsewhere(each, units)))}. The metres are counted.`;
    case 'seat full':
      return `${quote(doubt.seat)} has ${doubt.people} people listed on it.`;
    case 'locker over':
      return `${quote(doubt.locker)} holds ${printKg(doubt.insideKg, 'up')}; its limit is ${printKg(doubt.limitKg)}.`;
    case 'tank over': {
      const within =
        doubt.emptyWeightL > 0
          ? `, ${printLitres(doubt.emptyWeightL)} of them in the empty weight on the card`
          : '';
      return `${quote(doubt.tank)} is listed with ${printLitres(doubt.litres)}${within}; it holds ${printLitres(doubt.capacityL)}.`;
    }
    default:
      return assertNever(doubt);
  }
}

/** What an estimate rests on, and what would be better. */
export function sayEstimated({ of, totalKg }: Extract<Counted, { readonly kind: 'estimated' }>): string {
  const shared = 'shared between the axles as their plates are';
  return of === 'axles'
    ? `Estimate: the empty weight of ${printKg(totalKg)}, ready to drive, is worked out from the unladen mass on the card, with fuel and driver, and ${shared}. Weigh each axle and write both figures on the card.`
    : `Estimate: nothing was weighed. The empty weight is taken as ${printKg(totalKg)}, 91 % of the plated gross mass, as in the heaviest of three handbook examples, and ${shared}. One figure from a weighbridge makes it better, both axles make it right.`;
}

/** What was counted, or what somebody may do on the way, in a sentence. */
export function sayCounted(counted: Counted): string {
  switch (counted.kind) {
    case 'empty weight':
      return `The empty weight is counted with${counted.includesDriver ? '' : 'out'} the driver (${DRIVER_KG} kg by convention) and with${counted.includesFreshWater ? '' : 'out'} fresh water; fuel as when it was weighed, by convention 90 %.`;
    case 'estimated':
      return sayEstimated(counted);
    case 'no water':
      return 'No fresh water is listed: the tank counts as empty.';
    case 'taken off':
      return 'A negative mass is taken off the empty weight.';
    case 'over on the way':
      return sayOnTheWay(counted);
    case 'few things':
      return `Only ${printKg(counted.listedKg)} of things are listed; makers must allow for at least 10 kg a person and 10 kg a metre of length, here ${printKg(counted.leastKg)} (after EN 1646-2). Is everything listed?`;
    default:
      return assertNever(counted);
  }
}

function sayOnTheWay({ moment, over }: OverOnTheWay): string {
  const parts = over.map(({ limit, overKg }) => `${LIMIT_NAME[limit]} over by ${printKg(overKg, 'up')}`);
  return `On the way, ${WHEN[moment]}: ${parts.join(', ')}.`;
}

function sayShareOf(share: number): string {
  return `${printPercent(share)} of the mass stands on the front axle`;
}

function sayElsewhere({ item, place, placeM, xM }: Misplaced, units: Units): string {
  const at = (m: number) => sizeIn(units, m, 'nearest');
  const where = place === RACK || placeM === undefined ? 'the rack' : `${quote(place)} (${at(placeM)})`;
  return `${quote(item)} at ${where} but with ${at(xM)}`;
}

function some(names: readonly string[]): string {
  const more = names.length - NAMED_MOST;
  return names.slice(0, NAMED_MOST).join(', ') + (more > 0 ? `, and ${more} more` : '');
}
