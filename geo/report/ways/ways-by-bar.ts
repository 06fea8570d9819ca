import type { WayRound } from '../way-round.ts';

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

/** Ways that can be driven on one trip. */
interface Together {
  readonly taken: readonly number[];
  /** findings passed */
  readonly passed: ReadonlySet<string>;
  readonly extraS: number;
}

/**
 * The ways that are driven together to pass as much as can be, in the least time; none needs another's stretch of the
 * drive. In driving order. Each finding lies within the stretch of every way past it, so that the best choice up to some
 * place goes on from the best before it.
 */
export function driveTogether(ways: readonly WayRound[]): number[] {
  const order = [...ways.keys()].sort((a, b) => ways[a]!.toM - ways[b]!.toM);
  const none: Together = { taken: [], passed: new Set(), extraS: 0 };
  const upTo: { readonly endM: number; readonly best: Together }[] = [
    { endM: Number.NEGATIVE_INFINITY, best: none },
  ];
  for (const index of order) {
    const { fromM, toM, findingIds, extraS } = ways[index]!;
    const before = upTo.findLast(({ endM }) => endM <= fromM)!.best;
    const again = findingIds.some((id) => before.passed.has(id));
    const withIt: Together = {
      taken: [...before.taken, index],
      passed: new Set([...before.passed, ...findingIds]),
      extraS: before.extraS + extraS,
    };
    const without = upTo.at(-1)!.best;
    upTo.push({ endM: toM, best: !again && isBetter(withIt, without) ? withIt : without });
  }
  return [...upTo.at(-1)!.best.taken];
}

/** Passes more, or as much in less time; among equals the one with fewer ways, then what was told first. */
function isBetter(a: Together, b: Together): boolean {
  if (a.passed.size !== b.passed.size) return a.passed.size > b.passed.size;
  if (a.extraS !== b.extraS) return a.extraS < b.extraS;
  return a.taken.length < b.taken.length;
}

/** What several ways cost together. */
export function costTogether(ways: readonly WayRound[]): Pick<WayRound, 'extraM' | 'extraS'> {
  return {
    extraM: ways.reduce((sum, { extraM }) => sum + extraM, 0),
    extraS: ways.reduce((sum, { extraS }) => sum + extraS, 0),
  };
}
