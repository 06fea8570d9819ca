import { fail, ok, type Result } from '../../result.ts';
import { clip } from '../../units/text.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { LIQUID_FACTS } from '../../vehicle/liquids.ts';
import { DRIVER_KG } from '../list/presets.ts';

/** What of the empty weight is no figure of a weighbridge. */
export type Estimated = 'axles' | 'axles and total';

/** A card as a load is worked out for it, and what of its empty weight is estimated. */
export interface LoadCard extends VehicleCard {
  readonly estimated?: Estimated;
}

/** The same with what the axles carry empty. */
export type ReadyCard = LoadCard & { readonly runningOrder: NonNullable<VehicleCard['runningOrder']> };

/** Fuel of a card that names no fuel tank, litres at 90 %: a van's of 75 litres (common practice, no source). */
const USUAL_FUEL_L = 67.5;
const FUEL_SHARE = 0.9;

/**
 * Empty and ready to drive, of the plated gross mass, where nothing was weighed: 3190 of 3500 kg, the heaviest of three
 * worked examples in British handbooks (82, 87 and 91 %), so that the guess does not flatter.
 */
const GUESSED_SHARE = 3190 / 3500;

/** What the whole vehicle weighs empty and ready to drive: unladen, with fuel at 90 % and the driver. Kilograms. */
export function readyKg({ unladenKg = 0, tanks }: Pick<VehicleCard, 'unladenKg' | 'tanks'>): number {
  return unladenKg + fuelKg(tanks) + DRIVER_KG;
}

/** What it weighs without fuel, driver and fresh water, from one figure of a weighbridge. Kilograms. */
export function unladenFrom(
  card: Pick<VehicleCard, 'tanks'>,
  totalKg: number,
  aboard: { readonly driver: boolean; readonly freshWater: boolean },
): number {
  const fresh = card.tanks?.find(({ holds }) => holds === 'fresh-water')?.capacityL ?? 0;
  const waterKg = aboard.freshWater ? fresh * LIQUID_FACTS['fresh-water'].kgPerL : 0;
  return Math.round(totalKg - fuelKg(card.tanks) - (aboard.driver ? DRIVER_KG : 0) - waterKg);
}

function fuelKg(tanks: VehicleCard['tanks']): number {
  const litres = (tanks ?? [])
    .filter(({ holds }) => holds === 'fuel')
    .reduce((sum, { capacityL }) => sum + capacityL * FUEL_SHARE, 0);
  return (litres > 0 ? litres : USUAL_FUEL_L) * LIQUID_FACTS.fuel.kgPerL;
}

/**
 * The card with an empty weight: its own; else estimated from its unladen mass, shared between the axles as their plates
 * are; else, where guessing is allowed, from the plate alone.
 * @returns a problem that says how to get the figures where there is nothing to go by
 */
export function loadCardOf(
  card: LoadCard,
  { guess }: { readonly guess: boolean } = { guess: false },
): Result<ReadyCard> {
  const { runningOrder } = card;
  if (runningOrder !== undefined) return ok({ ...card, runningOrder });
  if (card.unladenKg !== undefined) return ok(withTotal(card, readyKg(card), 'axles'));
  if (guess) return ok(withTotal(card, card.grossKg * GUESSED_SHARE, 'axles and total'));
  return fail(
    'no-running-order',
    `The card of ${clip(card.name, 80)} has no empty weight: weigh the vehicle axle by axle, empty and ready to drive, and write both figures on its card ("runningOrder" in the file). One figure of the whole does for an estimate: "unladenKg", without fuel, driver and water.`,
  );
}

function withTotal(card: VehicleCard, totalKg: number, estimated: Estimated): ReadyCard {
  const { front, rear } = card.axleKg;
  const frontKg = Math.round((totalKg * front) / (front + rear));
  const runningOrder = {
    frontKg,
    rearKg: Math.round(totalKg) - frontKg,
    includesDriver: true,
    includesFreshWater: false,
  };
  return { ...card, runningOrder, estimated };
}
