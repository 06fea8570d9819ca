import { isDeepStrictEqual } from 'node:util';
import { itemOfVehicle } from '../../../geo/library/record-name.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import type { FleetVehicle } from '../../contract/fleet.ts';
import { FLEET_MAX } from '../../contract/limits.ts';
import { sha256Of } from '../files/sha256.ts';
import type { Saved, Store } from '../files/store.ts';
import type { Library } from '../library/library.ts';
import { type FleetEntry, fleetEntries, ranksFor } from './fleet-entries.ts';
import { mergeFleet } from './merge-fleet.ts';

type Vehicles = readonly FleetVehicle[];

/**
 * The fleet as the window has it, kept in the library.
 * @param first what a library without a vehicle shows; it is kept with the first change
 */
export function openFleet(library: Library, first: Vehicles): Store<Vehicles> {
  const entries = () => fleetEntries(library.list('vehicle'));
  const hasBegun = () => entries().length > 0 || library.bin('vehicle').length > 0;
  /** more than can be shown stay in the library as they are */
  const shown = () => entries().slice(0, FLEET_MAX);
  const current = (): Vehicles => (hasBegun() ? shown().map(({ vehicle }) => vehicle) : first);
  let saving: Promise<unknown> = Promise.resolve();

  async function save(mine: Vehicles, known: Vehicles): Promise<Result<Saved<Vehicles>>> {
    await library.refresh('vehicle');
    const merged = mergeFleet({ known, mine, theirs: hasBegun() ? current() : known });
    if (merged.vehicles.length > FLEET_MAX)
      return fail('too-many', sayTooMany(merged.vehicles.length, mine.length));
    const kept = await keep(merged.vehicles);
    return kept.ok ? ok({ value: current(), say: merged.say }) : kept;
  }

  /** Turns the list into changes of the vehicles that differ. */
  async function keep(wanted: Vehicles): Promise<Result<undefined>> {
    if (!hasBegun()) {
      const begun = await beginFleet(library, first);
      if (!begun.ok) return begun;
    }
    const found = new Map(shown().map((entry) => [entry.vehicle.id, entry]));
    const ranks = ranksFor(wanted.map(({ id }) => found.get(id)?.rank));
    const stays = new Set(wanted.map(({ id }) => id));
    for (const change of changesOf(wanted, ranks, found)) {
      const done = await library.put(change);
      if (!done.ok) return done;
    }
    const items = new Set(
      [...found.values()].filter(({ vehicle }) => stays.has(vehicle.id)).map(({ itemId }) => itemId),
    );
    for (const { itemId } of found.values()) {
      const item = library.find('vehicle', itemId);
      if (items.has(itemId) || !item || item.versions.length === 0) continue;
      const done = await library.remove(item);
      if (!done.ok) return done;
    }
    return ok(undefined);
  }

  return {
    current,
    refresh: () => library.refresh('vehicle'),
    notices: () => [...sayVersions(entries()), ...sayLeftOut(entries().length)],
    save(vehicles, known = current()) {
      const saved = saving.then(() => save(vehicles, known));
      saving = saved;
      return saved;
    },
  };
}

/** Keeps the vehicles a fleet begins with: the same records on whatever computer. */
export async function beginFleet(library: Library, vehicles: Vehicles): Promise<Result<undefined>> {
  for (const [rank, { id, card }] of vehicles.entries()) {
    const itemId = itemOfVehicle('vehicle', id, sha256Of);
    if (library.find('vehicle', itemId)) continue;
    const body = { vehicleId: id, card, rank };
    const done = await library.put({ kind: 'vehicle', id: itemId, body, over: [], made: '' });
    if (!done.ok) return done;
  }
  return ok(undefined);
}

function changesOf(wanted: Vehicles, ranks: readonly number[], found: ReadonlyMap<string, FleetEntry>) {
  const stays = new Set(wanted.map(({ id }) => id));
  const gone = [...found.values()].filter(({ vehicle }) => !stays.has(vehicle.id));
  return wanted.flatMap((vehicle, i) => {
    const entry = found.get(vehicle.id);
    const rank = ranks[i] ?? i;
    if (!entry) {
      const id = itemOfVehicle('vehicle', vehicle.id, sha256Of);
      return [{ kind: 'vehicle' as const, id, body: { vehicleId: vehicle.id, card: vehicle.card, rank } }];
    }
    // of two versions of one vehicle the other was deleted: this one takes its place too
    const others = gone.filter(({ itemId }) => itemId === entry.itemId);
    const changed = !isDeepStrictEqual(vehicle, entry.vehicle) || rank !== entry.rank || others.length > 0;
    if (!changed) return [];
    const over = [...entry.over, ...others.flatMap((other) => other.over)];
    const card = { ...vehicle.card };
    if (card.name === entry.vehicle.card.name) card.name = entry.body.card.name;
    return [{ kind: 'vehicle' as const, id: entry.itemId, body: { ...entry.body, card, rank }, over }];
  });
}

function sayVersions(entries: readonly FleetEntry[]): string[] {
  const others = entries.filter(
    (entry, i) => entries.findIndex(({ itemId }) => itemId === entry.itemId) !== i,
  );
  return others.map(
    ({ body }) =>
      `${quote(body.card.name)} was changed on two computers at once. Both versions are in the fleet: delete the one you do not want.`,
  );
}

function sayLeftOut(count: number): string[] {
  if (count <= FLEET_MAX) return [];
  return [
    `The library holds ${count} vehicles; the first ${FLEET_MAX} are shown. Delete some to see the others; they are kept as they are.`,
  ];
}

function sayTooMany(count: number, mine: number): string {
  const why = count > mine ? ' with what another window has added' : '';
  return `The fleet was not saved: it would have ${count} vehicles${why}, and can have ${FLEET_MAX}. Delete some first.`;
}
