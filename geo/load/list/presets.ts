import type { ItemKind } from './item-kind.ts';

/** Where something usually goes. */
export type Goes = 'seat' | 'locker' | 'gas-locker' | 'rack' | 'roof' | 'outside';

/** A mass to begin with, until the thing itself is put on a scale. */
interface Preset {
  readonly id: string;
  readonly name: string;
  /** kilograms; the heavier end where the source gives a range */
  readonly massKg: number;
  readonly kind: ItemKind;
  readonly goes: Goes;
  /** the published text, or that it is a usual figure */
  readonly source: string;
  /** a rack is in it: where one is fitted, that is in the empty weight already */
  readonly holdsRack?: true;
}

/** As two builders' handbooks have it. */
const CONVENTION = 'the conventional 75 kg a seat';
const OPTIONS = 'outandaboutlive, “Motorhome payload”';
/** No source: from memory. */
const MEMORY = 'a usual figure; put it on a scale';

/** What an empty weight that holds the driver holds for one, kilograms; second-hand. */
export const DRIVER_KG = 75;

export const PASSENGER: Preset = {
  id: 'passenger',
  name: 'Passenger',
  massKg: 75,
  kind: 'person',
  goes: 'seat',
  source: CONVENTION,
};

const DRIVER: Preset = {
  id: 'driver',
  name: 'Driver',
  massKg: DRIVER_KG,
  kind: 'driver',
  goes: 'seat',
  source: 'the empty weight, ready to drive, counts 75 kg for the driver',
};

/** Usual masses, each with its source in words. */
export const PRESETS: readonly Preset[] = [
  DRIVER,
  PASSENGER,
  thing('bicycle', 'Bicycle', 15, 'rack'),
  thing('e-bike', 'E-bike', 25, 'rack'),
  {
    ...thing('bike-rack-loaded', 'Bicycle rack with bicycles', 70, 'rack', `${OPTIONS}: 60 to 70 kg`),
    holdsRack: true,
  },
  thing('awning', 'Awning with poles', 45, 'outside', `${OPTIONS}: 35 to 45 kg`),
  thing('television', 'Television', 7, 'locker', OPTIONS),
  thing('solar', 'Solar panel', 5, 'roof', OPTIONS),
  thing('microwave', 'Microwave oven', 15, 'locker', OPTIONS),
  thing(
    'gas-11',
    'Gas cylinder, 11 kg, steel, full',
    25,
    'gas-locker',
    `${MEMORY}: 11 kg gas, 13 to 14 kg steel`,
  ),
  thing('gas-6', 'Gas cylinder, 6 kg, full', 15, 'gas-locker', `${MEMORY}: 6 kg gas, 7 to 9 kg cylinder`),
  thing('table-chairs', 'Table and four chairs', 25, 'locker', `${MEMORY}: 20 to 25 kg`),
  thing('ramps-cable', 'Levelling ramps and mains cable', 12, 'locker'),
  thing('bedding', 'Bedding for one', 4, 'locker'),
  thing('food', 'Food and drink', 30, 'locker', `${MEMORY}: 20 to 30 kg`),
  { ...thing('toilet-cassette', 'Toilet cassette, full', 20, 'locker'), kind: 'toilet' },
];

function thing(id: string, name: string, massKg: number, goes: Goes, source = MEMORY): Preset {
  return { id, name, massKg, kind: 'thing', goes, source };
}

/**
 * The least mass of personal effects a maker must allow for, kg: 10 a person and 10 a metre of length (a builder's
 * lexicon, after EN 1646-2, whose text was not seen). Caravans have another rule, with 30 kg more.
 */
export function personalEffectsKg(persons: number, lengthM: number): number {
  return 10 * (persons + lengthM);
}
