import { fileURLToPath } from 'node:url';
import { checkCommand } from './check-command.ts';
import { thisTerminal } from './terminal.ts';

/** The invented district that comes with the program; the built file lies two folders deeper than its source. */
const SAMPLES = fileURLToPath(new URL('../../../sample-routes/', import.meta.url));

const SAMPLE_WORDS = [
  ...['--route', `${SAMPLES}drives/barred.gpx`],
  ...['--map', `${SAMPLES}district.osm.pbf`],
  ...['--vehicle', `${SAMPLES}vehicles/coach-built-7.4.json`],
  ...['--country', 'GB'],
];

// whatever the verdict, a start that could print it went well
process.exitCode = (await checkCommand(SAMPLE_WORDS, thisTerminal())) === 2 ? 2 : 0;
