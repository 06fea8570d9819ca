import { type Disc, reachDeg } from './discs.ts';

/** Degrees; `east` is never less than `west` and runs beyond 180 across the antimeridian. */
export interface Box {
  readonly south: number;
  readonly north: number;
  readonly west: number;
  readonly east: number;
}

/** Around all of them; undefined for none. */
export function boxOfDiscs(discs: readonly Disc[]): Box | undefined {
  if (discs.length === 0) return undefined;
  const box = { south: 90, north: -90, west: Number.POSITIVE_INFINITY, east: Number.NEGATIVE_INFINITY };
  for (const disc of discs) {
    const { dLat, dLon } = reachDeg(disc.lat, disc.reachM);
    box.south = Math.min(box.south, disc.lat - dLat);
    box.north = Math.max(box.north, disc.lat + dLat);
    box.west = Math.min(box.west, disc.lon - dLon);
    box.east = Math.max(box.east, disc.lon + dLon);
  }
  return box;
}

/** Grows a box place by place. */
export class BoxMaker {
  private south = Number.POSITIVE_INFINITY;
  private north = Number.NEGATIVE_INFINITY;
  private west = Number.POSITIVE_INFINITY;
  private east = Number.NEGATIVE_INFINITY;
  /** of western longitudes a turn further on, for what crosses the antimeridian */
  private westOn = Number.POSITIVE_INFINITY;
  private eastOn = Number.NEGATIVE_INFINITY;

  add(lat: number, lon: number): void {
    this.south = Math.min(this.south, lat);
    this.north = Math.max(this.north, lat);
    this.west = Math.min(this.west, lon);
    this.east = Math.max(this.east, lon);
    const on = lon < 0 ? lon + 360 : lon;
    this.westOn = Math.min(this.westOn, on);
    this.eastOn = Math.max(this.eastOn, on);
  }

  /** Undefined before the first place. What is wider than half the Earth is taken to cross the antimeridian. */
  box(): Box | undefined {
    const { south, north, west, east } = this;
    if (south > north) return undefined;
    return east - west > 180
      ? { south, north, west: this.westOn, east: this.eastOn }
      : { south, north, west, east };
  }
}
