import type { StoppingPlace } from './stopping-place.ts';

/** What stops one vehicle on one drive. */
export interface StoppedCell {
  readonly drive: string;
  readonly vehicle: string;
  readonly stops: readonly StoppingPlace[];
}

/** A place with the drives and vehicles it stops, ids each once in the order given. */
export interface StopsMost {
  readonly place: StoppingPlace;
  readonly cells: number;
  readonly drives: readonly string[];
  readonly vehicles: readonly string[];
}

/** The places that stop most, each pair of drive and vehicle given once: by pairs of drive and vehicle, then by drives, then in the order met. */
export function whatStopsMost(cells: readonly StoppedCell[]): StopsMost[] {
  const places = new Map<
    string,
    { place: StoppingPlace; pairs: number; last?: StoppedCell; drives: Set<string>; vehicles: Set<string> }
  >();
  for (const cell of cells)
    for (const place of cell.stops) {
      const found = places.get(place.key) ?? {
        place,
        pairs: 0,
        drives: new Set<string>(),
        vehicles: new Set<string>(),
      };
      // met twice on one drive it stops that pair once
      if (found.last !== cell) found.pairs++;
      found.last = cell;
      found.drives.add(cell.drive);
      found.vehicles.add(cell.vehicle);
      places.set(place.key, found);
    }
  return [...places.values()]
    .map(({ place, pairs, drives, vehicles }) => ({
      place,
      cells: pairs,
      drives: [...drives],
      vehicles: [...vehicles],
    }))
    .sort((a, b) => b.cells - a.cells || b.drives.length - a.drives.length);
}
