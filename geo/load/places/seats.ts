import type { Seat, VehicleCard } from '../../vehicle/card.ts';
import { ITEM_NAME_LONGEST } from '../list/bounds.ts';
import type { LoadItem } from '../list/load-list.ts';
import { DRIVER_KG } from '../list/presets.ts';

/** Who sits on a seat. */
export interface SeatTaken {
  /** of the driver, what the empty weight holds already; 0 of the others. Kilograms */
  readonly countedKg: number;
  /** of whoever sits there, what is counted included; 0 for nobody */
  readonly massKg: number;
  /** what is listed for the seat */
  readonly listed?: LoadItem;
  /** listed on the same seat beside the first */
  readonly others: { readonly count: number; readonly massKg: number };
}

/** Where a driver sits of whom the card names no seat: usual, for the drawing alone. Metres behind the front axle. */
const DRIVER_AT_M = 0.3;

/** The driver whom the empty weight holds, to be drawn: nobody where one is listed, or none is counted. */
export function drawnDriver(card: VehicleCard, items: readonly LoadItem[]): LoadItem | undefined {
  if (card.runningOrder?.includesDriver !== true) return undefined;
  const seat = card.seats?.find(({ name }) => isDriverSeat(name));
  const listed = items.some((item) => item.kind === 'driver' || (seat && item.place === seat.name));
  return listed
    ? undefined
    : { name: 'Driver', massKg: DRIVER_KG, xM: seat?.xM ?? DRIVER_AT_M, kind: 'driver' };
}

/** The card marks it by its name alone. */
export function isDriverSeat(name: string): boolean {
  return /^driver\b/i.test(name);
}

export function seatTaken(card: VehicleCard, items: readonly LoadItem[], seat: Seat): SeatTaken {
  const [listed, ...others] = items.filter(({ place }) => place === seat.name);
  const countedKg = isDriverSeat(seat.name) && card.runningOrder?.includesDriver ? DRIVER_KG : 0;
  return {
    countedKg,
    massKg: countedKg + (listed?.massKg ?? 0),
    ...(listed && { listed }),
    others: { count: others.length, massKg: others.reduce((sum, { massKg }) => sum + massKg, 0) },
  };
}

/**
 * The list with somebody of so many kilograms on a seat, in place of who is listed there first; nobody where nothing
 * is left to list. Of a driver whom the empty weight holds only what is beyond that is listed.
 */
export function seatSomebody(
  card: VehicleCard,
  items: readonly LoadItem[],
  seat: Seat,
  kg: number,
): LoadItem[] {
  const { countedKg, listed } = seatTaken(card, items, seat);
  const massKg = Math.round((kg - countedKg) * 1000) / 1000;
  if (listed === undefined) return [...items, personOn(seat, countedKg, massKg)];
  if (massKg === 0) return items.filter((each) => each !== listed);
  return items.map((each) => (each === listed ? { ...listed, massKg } : each));
}

function personOn({ name, xM }: Seat, countedKg: number, massKg: number): LoadItem {
  // no second driver, only more of the one
  if (countedKg > 0)
    return { name: `Driver beyond ${countedKg} kg`, massKg, xM, kind: 'person', place: name };
  return isDriverSeat(name)
    ? { name: 'Driver', massKg, xM, kind: 'driver', place: name }
    : {
        name: `Passenger, ${name}`.slice(0, ITEM_NAME_LONGEST),
        massKg,
        xM,
        kind: 'person',
        place: name,
      };
}
