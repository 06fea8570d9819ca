import type { WayRound } from './way-round.ts';

/** Ways past the same findings, best first. */
export interface WaysPastBar {
  readonly findingIds: readonly string[];
  /** each with its place in the list it was told in */
  readonly ways: readonly { readonly way: WayRound; readonly index: number }[];
}

/** Ways gathered by what they pass, in the order told. */
export function waysByBar(ways: readonly WayRound[]): WaysPastBar[] {
  const groups = new Map<string, { findingIds: readonly string[]; ways: WaysPastBar['ways'][number][] }>();
  for (const [index, way] of ways.entries()) {
    const key = [...way.findingIds].sort().join('\n');
    const group = groups.get(key);
    if (group) group.ways.push({ way, index });
    else groups.set(key, { findingIds: way.findingIds, ways: [{ way, index }] });
  }
  return [...groups.values()];
}

/**
 * The ways that are driven together to pass everything: the first for each bar that neither passes what another passes
 * already nor needs its stretch of the drive. In driving order.
 */
export function driveTogether(ways: readonly WayRound[]): number[] {
  const passed = new Set<string>();
  const taken: number[] = [];
  for (const [index, { findingIds, fromM, toM }] of ways.entries()) {
    if (findingIds.some((id) => passed.has(id))) continue;
    if (taken.some((other) => ways[other]!.fromM < toM && ways[other]!.toM > fromM)) continue;
    for (const id of findingIds) passed.add(id);
    taken.push(index);
  }
  return taken.sort((a, b) => ways[a]!.fromM - ways[b]!.fromM);
}

/** What several ways cost together. */
export function costTogether(ways: readonly WayRound[]): Pick<WayRound, 'extraM' | 'extraS'> {
  return {
    extraM: ways.reduce((sum, { extraM }) => sum + extraM, 0),
    extraS: ways.reduce((sum, { extraS }) => sum + extraS, 0),
  };
}
