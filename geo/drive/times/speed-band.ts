import type { CountryRule, SpeedBand } from '../../country/rule.ts';
import { EVERY_RULE } from '../../country/table.ts';
import { GOODS_SIGNS_FROM_KG } from '../../tags/modes.ts';
import type { VehicleCard } from '../../vehicle/card.ts';

/** What of the vehicle decides its legal speed. Kilograms. */
export type SpeedVehicle = Pick<VehicleCard, 'grossKg' | 'unladenKg' | 'runningOrder'>;

interface BandFound {
  readonly band: SpeedBand;
  /** a sentence when the band is an assumption */
  readonly note?: string;
}

/**
 * The band of masses a vehicle falls into. Where the unladen mass decides (Great Britain) and the card does
 * not give it, it is bounded by the plate and the empty weight, and beyond that the slower band is taken:
 * a figure told to a driver must not be faster than the law.
 */
export function bandFor(rule: CountryRule, vehicle: SpeedVehicle): BandFound {
  if (rule.bandsBy.value === 'plated') return { band: bandAt(rule, vehicle.grossKg) };
  if (vehicle.unladenKg !== undefined) return { band: bandAt(rule, vehicle.unladenKg) };
  const running = vehicle.runningOrder;
  const mostKg = Math.min(vehicle.grossKg, running ? running.frontKg + running.rearKg : vehicle.grossKg);
  const band = bandAt(rule, mostKg);
  if (band.overKg === 0) return { band };
  return {
    band,
    note: `The card gives no unladen mass: the lower limits for over ${(band.overKg / 1000).toFixed(2)} t unladen are assumed. Fill in unladenKg; up to that mass the limits are a car’s.`,
  };
}

/** Vehicles of one class may go equally fast on every road of every country, and the same is said of that. */
export function speedClassOf(vehicle: SpeedVehicle): string {
  const bands = EVERY_RULE.map((rule) => {
    const { band, note } = bandFor(rule, vehicle);
    return [band.overKg, note];
  });
  return JSON.stringify([vehicle.grossKg > GOODS_SIGNS_FROM_KG, bands]);
}

function bandAt(rule: CountryRule, massKg: number): SpeedBand {
  return rule.bands.findLast(({ overKg }) => massKg > overKg) ?? rule.bands[0];
}
