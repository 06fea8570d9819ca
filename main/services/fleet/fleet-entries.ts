import { isDeepStrictEqual } from 'node:util';
import type { VehicleBody } from '../../../geo/library/body/vehicle.ts';
import type { Item } from '../../../geo/library/item.ts';
import { cut } from '../../../geo/units/text.ts';
import { CARD_NAME_LONGEST } from '../../../geo/vehicle/bounds.ts';
import type { FleetVehicle } from '../../contract/fleet.ts';

/** A vehicle as the window has it, and where it stands in the library. */
export interface FleetEntry {
  readonly vehicle: FleetVehicle;
  /** its place among the vehicles */
  readonly rank: number;
  /** the item it is a version of, and the versions it stands for */
  readonly itemId: string;
  readonly over: readonly string[];
  readonly body: VehicleBody;
}

const OTHER = ' (other version)';
const ID_LONGEST = 64;

/** The library's vehicles in their order. One that was changed in two places at once stands there twice. */
export function fleetEntries(items: readonly Item<'vehicle'>[]): FleetEntry[] {
  return items.flatMap(entriesOf).sort((a, b) => a.rank - b.rank || (a.vehicle.id < b.vehicle.id ? -1 : 1));
}

function entriesOf(item: Item<'vehicle'>): FleetEntry[] {
  const entries: FleetEntry[] = [];
  for (const { name, body } of item.versions) {
    const same = entries.findIndex((entry) => isDeepStrictEqual(entry.body.card, body.card));
    const known = entries[same];
    // versions that differ in their place alone are one
    if (known) entries[same] = { ...known, over: [...known.over, name] };
    else
      entries.push({
        vehicle: entries.length === 0 ? vehicleOf(body) : otherVersion(body, name),
        rank: body.rank ?? Number.MAX_SAFE_INTEGER,
        itemId: item.id,
        over: [name],
        body,
      });
  }
  // what said the same, and a deletion at the same time, goes with the first
  const named = new Set(entries.flatMap(({ over }) => over));
  const rest = item.heads.filter((head) => !named.has(head));
  return entries.map((entry, i) => (i === 0 ? { ...entry, over: [...entry.over, ...rest] } : entry));
}

function vehicleOf({ vehicleId, card }: VehicleBody): FleetVehicle {
  return { id: vehicleId, card };
}

function otherVersion({ vehicleId, card }: VehicleBody, name: string): FleetVehicle {
  const mark = `-${name.slice(0, 8)}`;
  return {
    id: vehicleId.slice(0, ID_LONGEST - mark.length) + mark,
    card: { ...card, name: cut(card.name, CARD_NAME_LONGEST - OTHER.length) + OTHER },
  };
}

/**
 * Places for a list whose members have some already: as few as possible are given anew, so that two computers that
 * each add a vehicle change no other.
 */
export function ranksFor(places: readonly (number | undefined)[]): number[] {
  const ranks: number[] = [];
  for (const [i, place] of places.entries()) {
    const before = ranks.at(-1) ?? Number.NEGATIVE_INFINITY;
    if (place !== undefined && place > before && place !== Number.MAX_SAFE_INTEGER) {
      ranks.push(place);
      continue;
    }
    const after = places.slice(i + 1).find((next) => next !== undefined && next > before);
    ranks.push(between(before, after));
  }
  return ranks;
}

function between(before: number, after: number | undefined): number {
  if (after === undefined || after === Number.MAX_SAFE_INTEGER)
    return Number.isFinite(before) ? Math.floor(before) + 1 : 0;
  return Number.isFinite(before) ? (before + after) / 2 : after - 1;
}
