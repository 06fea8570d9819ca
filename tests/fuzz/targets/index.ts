import type { Target } from '../target.ts';
import { calls } from './calls.ts';
import { damagedShelf } from './damaged-shelf.ts';
import { loadLists, swingPaths, vehicleCards } from './documents.ts';
import { gpx } from './gpx.ts';
import { gridStates } from './grid-states.ts';
import { handed } from './handed.ts';
import { conditionals, hours } from './hours.ts';
import { keptFiles } from './kept-files.ts';
import { libraryRecords } from './library.ts';
import { loopback } from './loopback.ts';
import { mapByte } from './map-byte.ts';
import { overpass, packed, pbf, xml } from './maps.ts';
import { quantities } from './quantities.ts';
import { limits, reports } from './report.ts';
import { lineAnswers, regionLists } from './servers.ts';
import { shelfBytes, shelfManifests, shelfParts } from './shelf.ts';
import { commandLine } from './terminal.ts';
import { yardWords } from './yard-words.ts';

export const TARGETS: readonly Target[] = [
  gpx,
  pbf,
  xml,
  overpass,
  packed,
  shelfBytes,
  shelfParts,
  shelfManifests,
  damagedShelf,
  regionLists,
  lineAnswers,
  hours,
  conditionals,
  quantities,
  reports,
  limits,
  mapByte,
  vehicleCards,
  loadLists,
  swingPaths,
  keptFiles,
  libraryRecords,
  gridStates,
  handed,
  yardWords,
  commandLine,
  calls,
  loopback,
];
