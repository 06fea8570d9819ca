/** For whoever has no map yet. */
export const OWN_DRIVES = 'For your own drives a map is fetched or imported once and then kept.';
