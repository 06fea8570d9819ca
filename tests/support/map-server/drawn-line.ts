import { localFrame } from '../../../geo/earth/frame.ts';
import { awayFrom } from '../../../geo/earth/segment.ts';
import type { Place } from '../../../geo/earth/sphere.ts';

/** Metres from a place to the nearest of a line's segments. */
export function awayFromLine(place: Place, line: readonly Place[]): number {
  const frame = localFrame(place.lat, place.lon);
  const flat = line.map(({ lat, lon }) => frame.toXY(lat, lon));
  return flat.slice(1).reduce((least, to, i) => {
    return Math.min(least, awayFrom({ x: 0, y: 0 }, flat[i] ?? to, to));
  }, Number.POSITIVE_INFINITY);
}

/** A drive of so many legs that winds at random, from a place onwards; one unbroken segment. */
export function windingLine(
  start: Place,
  legs: readonly { readonly lengthM: number; readonly turnDeg: number }[],
): { readonly lat: Float64Array; readonly lon: Float64Array } {
  let heading = 0;
  let at = start;
  const places = [start];
  for (const { lengthM, turnDeg } of legs) {
    heading += (turnDeg * Math.PI) / 180;
    const frame = localFrame(at.lat, at.lon);
    at = frame.fromXY(lengthM * Math.cos(heading), lengthM * Math.sin(heading));
    places.push({ lat: at.lat, lon: at.lon > 180 ? at.lon - 360 : at.lon });
  }
  return {
    lat: Float64Array.from(places, ({ lat }) => lat),
    lon: Float64Array.from(places, ({ lon }) => lon),
  };
}
