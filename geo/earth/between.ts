/** The value, or the bound it is beyond. */
export function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/** How far a value lies on the way between two others, 0…1; beyond an end that end, and 0 where there is no way. */
export function shareOf(value: number, from: number, to: number): number {
  return to > from ? clamp((value - from) / (to - from), 0, 1) : 0;
}

/** The value so far (0…1) on the way between two others. */
export function mix(from: number, to: number, share: number): number {
  return from + share * (to - from);
}
