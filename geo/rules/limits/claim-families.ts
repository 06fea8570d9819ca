import { directionOf } from '../../tags/driven.ts';
import { lanesDriven, readLaneKey } from '../../tags/lanes.ts';
import type { LimitClaim } from '../../tags/limits.ts';
import type { Place } from '../places.ts';

/** The unconditional tag of one limit, with the conditions that override it, the most specific last. */
export interface Family {
  readonly plain: LimitClaim | undefined;
  readonly conditionals: readonly LimitClaim[];
}

/** What the forms of one limit that are driven come to; forms of different limits never override each other. */
export function familiesOf(claims: readonly LimitClaim[], place: Place): Family[] {
  const byFamily = new Map<string, LimitClaim[]>();
  for (const claim of claims)
    if (!claim.lanes || drivesThoseLanes(claim, place))
      byFamily.set(claim.family, [...(byFamily.get(claim.family) ?? []), claim]);
  return [...byFamily.values()].flatMap(splitFamily);
}

function drivesThoseLanes(claim: LimitClaim, place: Place): boolean {
  const key = readLaneKey(claim.key);
  return key === undefined || lanesDriven(key, directionOf(place));
}

const rankOf = (claim: LimitClaim): number => claim.modeRank * 2 + (claim.directed ? 1 : 0);

/**
 * Lane by lane is more specific than the plain tag; a less specific mode's forms cannot change a more specific one's.
 */
function splitFamily(family: readonly LimitClaim[]): Family[] {
  const plains = family.filter((claim) => !claim.conditional && !claim.lanes);
  const reaches = (claim: LimitClaim) => claim.modeRank >= (plains[0]?.modeRank ?? 0);
  const lanes = family.filter((claim) => claim.lanes && !claim.conditional && reaches(claim));
  const conditionals = family
    .filter((claim) => claim.conditional && reaches(claim))
    .sort((a, b) => rankOf(a) - rankOf(b));
  // goods vehicles' tags may stand side by side without one being the more specific
  const heads = lanes.length > 0 ? lanes : plains.length > 0 ? plains : [undefined];
  return heads.map((plain) => ({ plain, conditionals }));
}
