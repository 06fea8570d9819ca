import type { Settings } from './settings.ts';

/** What holds until the user chooses. Apart from the schema, so that the page can have it without the schema's library. */
export const DEFAULT_SETTINGS: Settings = {
  format: 'lanegauge.settings',
  version: 1,
  units: 'metric',
  palette: 'system',
  margins: { heightM: 0.15, physicalWidthM: 0.15 },
  country: null,
  vehicleId: null,
  tiles: null,
};
