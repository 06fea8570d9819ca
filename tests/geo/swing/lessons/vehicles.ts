import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { type SwingVehicle, swingVehicleOf } from '../../../../geo/swing/swing-vehicle.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { swingVehicle } from '../../../support/swing-vehicle.ts';

const FOLDER = resolve(import.meta.dirname, '../../../../sample-routes/vehicles');

const cards: readonly VehicleCard[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(resolve(FOLDER, name), 'utf8')) as VehicleCard);

/** Every sample vehicle, with its rack fitted and without. */
export const sampleVehicles: readonly SwingVehicle[] = cards.flatMap((card) =>
  card.rack ? [swingVehicleOf(card, true), swingVehicleOf(card, false)] : [swingVehicleOf(card)],
);

/** A 7.4 m coach-built without a rack. */
export const coachBuilt = swingVehicle();

export const withRack: SwingVehicle = { ...coachBuilt, rack: { lengthM: 0.7, widthM: 2.32 } };
