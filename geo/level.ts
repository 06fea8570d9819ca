/**
 * How much a finding matters.
 *
 * - `barred`: exceeds a mapped limit that binds this vehicle there and then, or access is forbidden.
 *   Must be true: practically no false alarm.
 * - `squeeze`: inside the limit by less than the margin asked for; or binding only in one lane or under a
 *   condition that cannot be settled. May turn out harmless.
 * - `unproved`: something there could stop the vehicle and the map gives no figure, gives it unreadably, or has
 *   no roads there. Silence here would be the worst fault.
 * - `heed`: passable; drive it with care.
 */
export const LEVELS = ['barred', 'squeeze', 'unproved', 'heed'] as const;
export type Level = (typeof LEVELS)[number];

/** What a whole drive comes to: the worst level present, or `clear`. */
export const VERDICTS = [...LEVELS, 'clear'] as const;
export type Verdict = (typeof VERDICTS)[number];
