import { type Box, BoxMaker } from '../../roads/box.ts';

/** The places of one way, degrees: the first `count` entries, NaN where the source lacks the node. Used over and over. */
export interface Located {
  count: number;
  lat: Float64Array;
  lon: Float64Array;
}

/** Room for a way's places, to be used for one after the other. */
export function newLocated(): Located {
  return { count: 0, lat: new Float64Array(4096), lon: new Float64Array(4096) };
}

/** Makes room for so many places. */
export function sizeLocated(located: Located, count: number): void {
  if (located.lat.length < count) {
    located.lat = new Float64Array(2 * count);
    located.lon = new Float64Array(2 * count);
  }
  located.count = count;
}

/** Around all places that are there; undefined where none is. */
export function boxOfLocated({ count, lat, lon }: Located): Box | undefined {
  let south = Number.POSITIVE_INFINITY;
  let north = Number.NEGATIVE_INFINITY;
  let west = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const y = lat[i]!;
    const x = lon[i]!;
    // comparing with NaN is false: a lacking node changes nothing
    if (y < south) south = y;
    if (y > north) north = y;
    if (x < west) west = x;
    if (x > east) east = x;
  }
  if (south > north) return undefined;
  if (east - west <= 180) return { south, north, west, east };
  const maker = new BoxMaker();
  for (let i = 0; i < count; i++) if (!Number.isNaN(lat[i]!)) maker.add(lat[i]!, lon[i]!);
  return maker.box();
}
