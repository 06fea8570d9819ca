import { damaged } from './cursor.ts';

/**
 * Units of a block as degrees, in place. One division of whole nanodegrees rounds once, so the figure is the one a
 * decimal of the same digits gives.
 */
export function toDegrees(values: Float64Array, count: number, granularity: number, offset: number): void {
  for (let i = 0; i < count; i++) values[i] = (offset + granularity * values[i]!) / 1e9;
}

/** Refuses places off the Earth: they are the mark of damage. */
export function checkPlaces(lat: Float64Array, lon: Float64Array, count: number): void {
  for (let i = 0; i < count; i++)
    if (!(Math.abs(lat[i]!) <= 90 && Math.abs(lon[i]!) <= 180))
      throw damaged('a node whose place is missing or not on Earth');
}
