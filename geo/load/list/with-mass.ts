import { LIQUID_FACTS } from '../../vehicle/liquids.ts';
import { liquidOf } from './item-kind.ts';
import type { LoadItem } from './load-list.ts';

/** The item with another mass, kilograms: of a liquid by the litre the litres follow. */
export function withMass(item: LoadItem, massKg: number): LoadItem {
  const { litres, ...rest } = item;
  const liquid = liquidOf(item);
  if (litres === undefined || liquid === undefined || massKg <= 0) return { ...rest, massKg };
  return { ...rest, massKg, litres: roundLitres(massKg / LIQUID_FACTS[liquid].kgPerL) };
}

/** To a tenth of a litre: no gauge shows more. */
export function roundLitres(litres: number): number {
  return Math.round(litres * 10) / 10;
}
