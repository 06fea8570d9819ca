import type { ItemKind } from './item-kind.ts';

/** A mass to begin with, until the thing itself is put on a scale. */
export interface Preset {
  readonly id: string;
  readonly name: string;
  /** kilograms; the heavier end where the source gives a range */
  readonly massKg: number;
  readonly kind: ItemKind;
  /** where it usually goes */
  readonly goes: 'seat' | 'locker' | 'gas-locker' | 'rack' | 'roof' | 'outside';
  /** the published text, or `from memory` */
  readonly source: string;
}

const CONVENTION = 'the conventional 75 kg a seat (two builders’ handbooks)';
const OPTIONS = 'outandaboutlive, “Motorhome payload”';
const MEMORY = 'from memory; put it on a scale';

/** Usual masses, each with its source in words. */
export const PRESETS: readonly Preset[] = [
  preset('driver', 'Driver', 75, 'seat', 'running order counts 75 kg for the driver, second-hand', 'driver'),
  preset('passenger', 'Passenger', 75, 'seat', CONVENTION, 'person'),
  preset('bicycle', 'Bicycle', 15, 'rack', MEMORY),
  preset('e-bike', 'E-bike', 25, 'rack', MEMORY),
  preset('bike-rack-loaded', 'Bicycle rack with bicycles', 70, 'rack', `${OPTIONS}: 60 to 70 kg`),
  preset('awning', 'Awning with poles', 45, 'outside', `${OPTIONS}: 35 to 45 kg`),
  preset('television', 'Television', 7, 'locker', OPTIONS),
  preset('solar', 'Solar panel', 5, 'roof', OPTIONS),
  preset('microwave', 'Microwave oven', 15, 'locker', OPTIONS),
  preset(
    'gas-11',
    'Gas cylinder, 11 kg, steel, full',
    25,
    'gas-locker',
    `${MEMORY}: 11 kg gas, 13 to 14 kg steel`,
  ),
  preset('gas-6', 'Gas cylinder, 6 kg, full', 15, 'gas-locker', `${MEMORY}: 6 kg gas, 7 to 9 kg cylinder`),
  preset('table-chairs', 'Table and four chairs', 25, 'locker', `${MEMORY}: 20 to 25 kg`),
  preset('ramps-cable', 'Levelling ramps and mains cable', 12, 'locker', MEMORY),
  preset('bedding', 'Bedding for one', 4, 'locker', MEMORY),
  preset('food', 'Food and drink', 30, 'locker', `${MEMORY}: 20 to 30 kg`),
  preset('toilet-cassette', 'Toilet cassette, full', 20, 'locker', MEMORY, 'toilet'),
];

function preset(
  id: string,
  name: string,
  massKg: number,
  goes: Preset['goes'],
  source: string,
  kind: ItemKind = 'thing',
): Preset {
  return { id, name, massKg, kind, goes, source };
}

/**
 * The least mass of personal effects a maker must allow for, kg: 10 a person and 10 a metre of length (a builder's lexicon,
 * after EN 1646-2, whose text was not seen). Caravans have another rule, with 30 kg more.
 */
export function personalEffectsKg(persons: number, lengthM: number): number {
  return 10 * (persons + lengthM);
}
