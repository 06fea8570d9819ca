import { LOAD_MARGIN_KG } from '../../geo/load/weigh/load-level.ts';
import { DEFAULT_MARGINS } from '../../geo/rules/rule.ts';
import { NO_FIRM } from './hand-over/no-firm.ts';
import { PUBLIC_SERVERS } from './server-address.ts';
import type { Settings } from './settings.ts';

/** What holds until the user chooses. Apart from the schema, so that the page can have it without the schema's library. */
export const DEFAULT_SETTINGS: Settings = {
  format: 'lanegauge.settings',
  version: 1,
  units: 'metric',
  palette: 'system',
  margins: DEFAULT_MARGINS,
  loadMarginKg: LOAD_MARGIN_KG,
  country: null,
  vehicleId: null,
  tiles: null,
  servers: PUBLIC_SERVERS,
  firm: NO_FIRM,
  before: null,
  prefer: 'quickest',
  left: null,
};
