/** Stands wherever a verdict is shown. */
export const STANDING_CAUTION =
  'Signs and the road decide. Map data is incomplete and may be old; this is an aid for planning, not a permit. Weigh the vehicle. Follow local rules.';
