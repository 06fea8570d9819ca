import { distanceM } from '../earth/sphere.ts';
import type { Box } from '../roads/box.ts';

/** Values of `place` that a map can be told by, the largest first. */
const RANKS: readonly string[] = ['city', 'town', 'village'];
/** So many of the largest are all named; of more, the one nearest to the middle. */
const NAMED = 3;
/** A map of more than these is a country's: none of them says where it lies. */
const TOLD = 12;
/** Kept of each rank: a place often stands on the map twice, as a point and as an area. */
const KEPT = 4 * TOLD;

/** A town on a map. */
export interface Settlement {
  readonly name: string;
  /** the value of its `place` */
  readonly what: string;
  /** degrees */
  readonly lat: number;
  readonly lon: number;
}

/** Gathers the places of a map by which it may be told. */
export class Settlements {
  private readonly byRank = RANKS.map((): Settlement[] => []);

  add(place: Settlement): void {
    const kept = this.byRank[RANKS.indexOf(place.what)];
    if (kept !== undefined && kept.length < KEPT) kept.push(place);
  }

  all(): Settlement[] {
    return this.byRank.flat();
  }
}

/** The names of the largest places on a map, the nearest to its middle first; none where there are too many to tell by. */
export function aroundOf(places: readonly Settlement[], box: Box | null): string[] {
  if (box === null) return [];
  const largest = RANKS.map((rank) => places.filter(({ what }) => what === rank)).find(
    ({ length }) => length > 0,
  );
  const [lat, lon] = [(box.south + box.north) / 2, (box.west + box.east) / 2];
  const away = (place: Settlement) => distanceM(lat, lon, place.lat, place.lon);
  const ordered = (largest ?? []).toSorted((a, b) => away(a) - away(b) || (a.name < b.name ? -1 : 1));
  const names = [...new Set(ordered.map(({ name }) => name))];
  if (names.length > TOLD) return [];
  return names.length > NAMED ? names.slice(0, 1) : names;
}
