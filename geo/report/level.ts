/**
 * How much a finding matters.
 *
 * - `barred`: exceeds a mapped limit that binds this vehicle there and then, or access is forbidden.
 *   Must be true: practically no false alarm.
 * - `tight`: inside the limit by less than the margin asked for; or binding only in one lane or under a
 *   condition that cannot be settled. May turn out harmless.
 * - `unknown`: something there could stop the vehicle and the map gives no figure, gives it unreadably, or has
 *   no roads there. Silence here would be the worst fault.
 * - `care`: passable; drive it with care.
 */
export const LEVELS = ['barred', 'tight', 'unknown', 'care'] as const;
export type Level = (typeof LEVELS)[number];

/** What a whole drive comes to: the worst level present, or `clear`. */
export const VERDICTS = [...LEVELS, 'clear'] as const;
export type Verdict = (typeof VERDICTS)[number];
