import type { StoppingPlace } from './stopping-place.ts';

/** What stops one vehicle on one drive. */
interface StoppedCell {
  readonly drive: string;
  readonly vehicle: string;
  readonly cell: { readonly stops: readonly StoppingPlace[] };
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
  for (const met of cells)
    for (const place of met.cell.stops) {
      let found = places.get(place.key);
      if (found === undefined) {
        found = { place, pairs: 0, drives: new Set(), vehicles: new Set() };
        places.set(place.key, found);
      }
      // met twice on one drive it stops that pair once
      if (found.last === met) continue;
      found.pairs++;
      found.last = met;
      found.drives.add(met.drive);
      found.vehicles.add(met.vehicle);
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
