import { printKg } from '../units/print.ts';
import type { LoadLimit, LoadResult } from './result.ts';

/** Stands wherever a load's figures are shown. */
export const LOAD_CAUTION =
  'Worked out from the figures given, not weighed. Weigh the vehicle on a public weighbridge, axle by axle, as it leaves. The plates and local rules decide.';

/** What is held against, as it is called in a sentence. */
export const LIMIT_NAME: Readonly<Record<LoadLimit, string>> = {
  gross: 'gross',
  front: 'front axle',
  rear: 'rear axle',
  rack: 'rack',
};

/** What is left of one limit, negative when over; nought for a rack that is not there. Kilograms. */
export function spareOf({ spare, rack }: LoadResult, limit: LoadLimit): number {
  return limit === 'rack' ? (rack?.spareKg ?? 0) : spare[`${limit}Kg`];
}

/** What a load has to say beside a drive's verdict: that it is over comes first. Sentences. */
export function sayLoaded({ over, warnings }: LoadResult): string[] {
  if (over.length === 0) return [...warnings];
  return ['The vehicle must not leave as loaded, whatever the road allows.', ...warnings];
}

/** `plated at 3500 kg`; with what it weighs as listed, where a load is given. */
export function sayPlated(plateKg: number, actualKg: number | undefined): string {
  const plated = `plated at ${printKg(plateKg, 'up')}`;
  if (actualKg === undefined || actualKg <= plateKg) return plated;
  return `${plated} and loaded as listed ${printKg(actualKg, 'up')}, over its plate by ${printKg(actualKg - plateKg, 'up')}`;
}
