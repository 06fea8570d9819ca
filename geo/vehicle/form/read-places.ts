import { given } from '../../given.ts';
import type { Result } from '../../result.ts';
import { quote } from '../../units/text.ts';
import type { VehicleCard } from '../card.ts';
import { nameFault } from '../place-names.ts';
import { KINDS, type PlaceField, type PlaceKind, type PlaceRow, type PlaceRows } from './place-rows.ts';
import { readLimit, readLitres, readPlaceX } from './read-figures.ts';

/** A place as it was understood. Metres behind the front axle, litres, kilograms. */
export interface ReadPlace {
  readonly xM?: number;
  readonly capacityL?: number;
  readonly limitKg?: number;
  /** a sentence for each field that is wrong */
  readonly faults: Readonly<Partial<Record<PlaceField, string>>>;
}

export interface ReadPlaces {
  readonly rows: Readonly<Record<PlaceKind, readonly ReadPlace[]>>;
  /** what a card says of its places, when nothing is wrong */
  readonly places?: Pick<VehicleCard, 'seats' | 'tanks' | 'lockers'>;
}

/** Reads the places as typed: figures, a sentence for each that is wrong, and the card's lists when none is. */
export function readPlaces(rows: PlaceRows): ReadPlaces {
  const named = new Set<string>();
  const read: Record<PlaceKind, ReadPlace[]> = { seats: [], tanks: [], lockers: [] };
  for (const { kind, columns } of KINDS)
    for (const row of rows[kind]) {
      read[kind].push(readPlace(row, columns.flat(), named));
      named.add(row.name);
    }
  const good = Object.values(read).every((each) =>
    each.every(({ faults }) => Object.keys(faults).length === 0),
  );
  return good ? { rows: read, places: placesOf(rows, read) } : { rows: read };
}

function readPlace(row: PlaceRow, fields: readonly PlaceField[], named: ReadonlySet<string>): ReadPlace {
  const faults: Partial<Record<PlaceField, string>> = {};
  const figures: { xM?: number; capacityL?: number; limitKg?: number } = {};
  const take = (field: 'xM' | 'capacityL' | 'limitKg', read: Result<number>) => {
    if (read.ok) figures[field] = read.value;
    else faults[field] = read.error.message;
  };
  const name = sayNameFault(row.name, named);
  if (name !== undefined) faults.name = name;
  if (fields.includes('holds') && row.holds === '') faults.holds = 'Choose what it holds.';
  take('xM', readPlaceX(row.xM));
  if (fields.includes('capacityL')) take('capacityL', readLitres(row.capacityL));
  if (fields.includes('limitKg') && row.limitKg.trim() !== '') take('limitKg', readLimit(row.limitKg));
  return { ...figures, faults };
}

function sayNameFault(name: string, taken: ReadonlySet<string>): string | undefined {
  if (name.trim() === '') return 'Give it a name.';
  switch (nameFault(name, taken)) {
    case 'taken':
      return `${quote(name, 40)} is the name of another place.`;
    case 'rack':
      return `${quote(name)} is the rear rack’s own name.`;
    default:
      return undefined;
  }
}

function placesOf(rows: PlaceRows, read: ReadPlaces['rows']): NonNullable<ReadPlaces['places']> {
  const figures = (kind: PlaceKind, index: number) => read[kind][index] ?? { faults: {} };
  const seats = rows.seats.map(({ name }, i) => ({ name, xM: figures('seats', i).xM ?? 0 }));
  const tanks = rows.tanks.flatMap(({ name, holds }, i) => {
    const { xM = 0, capacityL = 0 } = figures('tanks', i);
    return holds === '' ? [] : [{ name, holds, xM, capacityL }];
  });
  const lockers = rows.lockers.map(({ name }, i) => {
    const { xM = 0, limitKg } = figures('lockers', i);
    return { name, xM, ...given({ limitKg }) };
  });
  return {
    ...(seats.length > 0 && { seats }),
    ...(tanks.length > 0 && { tanks }),
    ...(lockers.length > 0 && { lockers }),
  };
}
