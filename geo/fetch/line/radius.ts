/** As far from the drawn line as a road may lie that the drive is followed on, and what stands beside it. */
const LEAST_M = 150;
/** Between sparse points the road may swing out: half the straight leg is a detour of 1.4 times its length. */
const PER_LEG = 0.5;
/** Beyond, a server is asked for a district rather than for a drive. */
export const MOST_RADIUS_M = 3_000;

/** How far beside a leg of such a length roads are asked for, metres. */
export function radiusOf(legM: number): number {
  return Math.min(MOST_RADIUS_M, Math.max(LEAST_M, Math.ceil((PER_LEG * legM) / 10) * 10));
}
