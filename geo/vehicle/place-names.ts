/** The rack's own name in a load list; no other place of a card may have it. */
export const RACK = 'rack';

/** Why a place of a card cannot be called so: an item of a load names its place. */
type NameFault = 'taken' | 'rack';

/** @param taken the names of the places before it */
export function nameFault(name: string, taken: ReadonlySet<string>): NameFault | undefined {
  if (taken.has(name)) return 'taken';
  return name.toLowerCase() === RACK ? 'rack' : undefined;
}
