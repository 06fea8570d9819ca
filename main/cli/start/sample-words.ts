import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The built file lies two folders deeper than its source. */
export const ROOT = fileURLToPath(new URL('../../../', import.meta.url));
export const SAMPLES = join(ROOT, 'sample-routes');

/** What the sample is checked with. */
export const SAMPLE_WORDS = [
  ...['--route', join(SAMPLES, 'drives', 'barred.gpx')],
  ...['--map', join(SAMPLES, 'district.osm.pbf')],
  ...['--vehicle', join(SAMPLES, 'vehicles', 'coach-built-7.4.json')],
  ...['--country', 'GB'],
];
