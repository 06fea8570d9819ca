import { access } from 'node:fs/promises';
import { join } from 'node:path';
import type { Sample } from '../contract/description.ts';
import { readLoadFile } from './vehicle/read-load-file.ts';

/** The invented district that comes with the program. */
const SAMPLE: Sample = {
  map: 'district',
  drives: [
    {
      id: 'barred',
      name: 'Barred three ways',
      says: 'a gap too narrow, a bridge too low and a bridge too weak',
    },
    { id: 'clear', name: 'Clear', says: 'nothing that is mapped stops it' },
    { id: 'everything', name: 'With everything', says: 'one of each thing the map can say' },
    { id: 'sparse', name: 'Sparse route', says: 'far-apart points: what lies between is guessed' },
    { id: 'recorded', name: 'Recorded track', says: 'a noisy recording, as a logger writes it' },
  ],
  defaultDrive: 'barred',
  defaultVehicle: 'coach-built-7-4',
  country: 'GB',
};

/** Where the sample's files lie. */
export interface SampleFiles {
  readonly vehicles: string;
  readonly load: string;
  /** @returns the path, undefined for an id that is not in the list */
  find(id: string): { readonly path: string; readonly name: string } | undefined;
}

/** The sample with the drives and the load that are really there. */
export async function presentSample(files: SampleFiles): Promise<Sample> {
  const present = await Promise.all(
    SAMPLE.drives.map(({ id }) =>
      access(files.find(id)?.path ?? '').then(
        () => true,
        () => false,
      ),
    ),
  );
  const load = await readLoadFile(files.load);
  return {
    ...SAMPLE,
    drives: SAMPLE.drives.filter((_, i) => present[i]),
    ...(load.ok
      ? { load: { name: 'Family of four', vehicleId: SAMPLE.defaultVehicle, items: load.value.items } }
      : {}),
  };
}

/** The sample's files by their ids. @param folder where sample-routes lies */
export function sampleFiles(folder: string): SampleFiles {
  const known = new Map([
    [SAMPLE.map, { path: join(folder, 'district.osm.pbf'), name: 'district.osm.pbf' }],
    ...SAMPLE.drives.map(
      ({ id }) => [id, { path: join(folder, 'drives', `${id}.gpx`), name: `${id}.gpx` }] as const,
    ),
  ]);
  return {
    vehicles: join(folder, 'vehicles'),
    load: join(folder, 'loads', 'family-of-four.json'),
    find: (id) => known.get(id),
  };
}
