import { lengthEntry } from '../../units/entry-text.ts';
import type { VehicleCard } from '../card.ts';
import type { Liquid } from '../liquids.ts';

export type PlaceKind = 'seats' | 'tanks' | 'lockers';

/** One place while it is written: texts as typed. A seat has no more than a name and a distance. */
export interface PlaceRow {
  readonly name: string;
  readonly xM: string;
  readonly holds: Liquid | '';
  readonly capacityL: string;
  readonly limitKg: string;
}
export type PlaceField = keyof PlaceRow;
export type PlaceRows = Readonly<Record<PlaceKind, readonly PlaceRow[]>>;

export interface KindOfPlace {
  readonly kind: PlaceKind;
  readonly title: string;
  readonly one: string;
  /** by column: what a tank holds stands with its name */
  readonly columns: readonly (readonly PlaceField[])[];
  readonly hint: string;
}

export const KINDS: readonly KindOfPlace[] = [
  {
    kind: 'seats',
    title: 'Seats',
    one: 'Seat',
    columns: [['name'], ['xM']],
    hint: 'The driver’s begins with the word Driver. Measure to the middle of the cushion.',
  },
  {
    kind: 'tanks',
    title: 'Tanks',
    one: 'Tank',
    columns: [['name', 'holds'], ['xM'], ['capacityL']],
    hint: 'Measure to the middle of the tank; litres when it is full.',
  },
  {
    kind: 'lockers',
    title: 'Lockers',
    one: 'Locker',
    columns: [['name'], ['xM'], ['limitKg']],
    hint: 'Cupboards and the garage too. Measure to the middle; the limit is what its plate or handbook allows.',
  },
];

export const EMPTY_ROW: PlaceRow = { name: '', xM: '', holds: '', capacityL: '', limitKg: '' };
export const NO_PLACES: PlaceRows = { seats: [], tanks: [], lockers: [] };

/** The places of a card as texts. @param how what fits metres and feet both is written in feet and inches */
export function rowsOf(
  { seats = [], tanks = [], lockers = [] }: VehicleCard,
  how: { readonly inFeet: boolean },
): PlaceRows {
  const distance = (m: number) => withFourth(lengthEntry(Math.round(m * 10_000) / 10_000, how));
  return {
    seats: seats.map(({ name, xM }) => ({ ...EMPTY_ROW, name, xM: distance(xM) })),
    tanks: tanks.map(({ name, holds, xM, capacityL }) => ({
      ...EMPTY_ROW,
      name,
      holds,
      xM: distance(xM),
      capacityL: figureText(capacityL),
    })),
    lockers: lockers.map(({ name, xM, limitKg }) => ({
      ...EMPTY_ROW,
      name,
      xM: distance(xM),
      limitKg: limitKg === undefined ? '' : figureText(limitKg),
    })),
  };
}

/** A figure for its field. Three decimals get a fourth: "1.125" may be read as thousands. */
function figureText(value: number): string {
  return withFourth(String(Math.round(value * 10_000) / 10_000).replace('-', '−'));
}

function withFourth(text: string): string {
  return /\.\d{3}$/.test(text) ? `${text}0` : text;
}
