/** Largest GPX file read, bytes: a 24-hour recording at 1 Hz with every extension is about 50 MB. */
export const GPX_MAX_BYTES = 64 * 1024 * 1024;

/** Largest map file taken from the page, bytes: a country extract is 1–4 GB. */
export const MAP_MAX_BYTES = 8 * 1024 * 1024 * 1024;

/** Largest load list read, bytes: the most items with long names stay far below. */
export const LOAD_MAX_BYTES = 1_000_000;

/** Largest file of local notes read, bytes. */
export const NOTES_MAX_BYTES = 3_000_000;

/** Largest request of a call, bytes: a full fleet with long notes, as it was and as it is to be, stays far below. */
export const CALL_MAX_BYTES = 4 * 1024 * 1024;

/** The most vehicles one fleet holds. */
export const FLEET_MAX = 200;

/** The most load lists kept: those of vehicles that have left the fleet and may come back among them. */
export const LOADS_MAX = 1000;

/** So many places a plan may have. */
export const PLAN_PLACES_MAX = 100;

/** Files remembered as recently opened. */
export const RECENTS_MAX = 12;

/** How often a watching page hears from its host. */
export const HEARTBEAT_MS = 10_000;

/** The most spare that can be asked for before a passage counts as free, metres. */
export const MARGIN_MAX_M = 2;

/** The same of each plate before a load counts as easily kept, kilograms. */
export const LOAD_MARGIN_MAX_KG = 500;

/** Letters of what a firm writes on its drive sheets. */
export const FIRM_MAX = { heading: 120, telephone: 60 } as const;
export const BEFORE_MAX = { lines: 20, letters: 120 } as const;
