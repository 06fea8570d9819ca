import { BoxMaker } from '../../roads/box.ts';
import { LACKING, PER_DEGREE } from '../encode-block.ts';

/** The places of one way, degrees: the first `count` entries, NaN where the source lacks the node. Used over and over. */
export interface Located {
  count: number;
  lat: Float64Array;
  lon: Float64Array;
}

/** Places in ten-millionths of a degree; LACKING for a latitude that is not there or not whole. */
export interface WholePlaces {
  lat7: Int32Array;
  lon7: Int32Array;
}

/** A box, degrees, used for one way after the other. */
export interface WayBox {
  south: number;
  west: number;
  north: number;
  east: number;
}

/** Room for a box. */
export function newWayBox(): WayBox {
  // halves, so that these are kept as doubles from the start
  return { south: 0.5, west: 0.5, north: 0.5, east: 0.5 };
}

/** Around the places from … from + count - 1. @returns false where one of them is lacking or there is none */
export function boxOfWhole({ lat7, lon7 }: WholePlaces, from: number, count: number, into: WayBox): boolean {
  let south = 0x7fffffff;
  let north = -0x7fffffff;
  let west = 0x7fffffff;
  let east = -0x7fffffff;
  for (let i = from; i < from + count; i++) {
    const y = lat7[i]!;
    const x = lon7[i]!;
    if (y < south) south = y;
    if (y > north) north = y;
    if (x < west) west = x;
    if (x > east) east = x;
  }
  // beyond every latitude: what is lacking is the northernmost
  if (south > north || north === LACKING) return false;
  if (east - west > 180 * PER_DEGREE) {
    const maker = new BoxMaker();
    for (let i = from; i < from + count; i++) maker.add(lat7[i]! / PER_DEGREE, lon7[i]! / PER_DEGREE);
    return copyBox(maker, into);
  }
  into.south = south / PER_DEGREE;
  into.north = north / PER_DEGREE;
  into.west = west / PER_DEGREE;
  into.east = east / PER_DEGREE;
  return true;
}

function copyBox(maker: BoxMaker, into: WayBox): boolean {
  const box = maker.box();
  if (box === undefined) return false;
  Object.assign(into, box);
  return true;
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

/** Around all places that are there. @returns false where none is */
export function boxOfLocated({ count, lat, lon }: Located, into: WayBox): boolean {
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
  if (south > north) return false;
  if (east - west > 180) {
    const maker = new BoxMaker();
    for (let i = 0; i < count; i++) if (!Number.isNaN(lat[i]!)) maker.add(lat[i]!, lon[i]!);
    return copyBox(maker, into);
  }
  into.south = south;
  into.north = north;
  into.west = west;
  into.east = east;
  return true;
}
