import { distanceM } from '../../earth/sphere.ts';
import type { Roads } from '../../roads/roads.ts';
import type { RoadGraph } from './graph/graph.ts';
import { buildLattice, type Lattice } from './lattice.ts';
import type { MatchSettings } from './settings.ts';
import type { Positions } from './thin.ts';
import { type BestChain, findBestChain } from './viterbi.ts';

/** A break over more ground than this is a break in the map, not a receiver's slip. */
const LONGEST_M = 500;
/** So many positions may be left out on each side of a break to heal it. */
const MOST_EACH_SIDE = 10;
/** So many positions on each side are matched anew to see whether it heals. */
const WINDOW = 40;

/**
 * Leaves out positions of a recording that throw it off the roads for a moment, as a receiver's do between tall
 * houses: on each side of a break one more position is dropped until roads alone explain the rest
 * (Newson & Krumm 2009, section 4.2). Breaks that do not heal stay.
 */
export function healBreaks(
  positions: Positions,
  chain: BestChain,
  lattice: Lattice,
  roads: Roads,
  graph: RoadGraph,
  settings: MatchSettings,
): Positions {
  const dropped = new Set<number>();
  for (const { before, after } of findBreaks(chain, lattice)) {
    const lat = positions.lat;
    const lon = positions.lon;
    const acrossM = distanceM(lat[before]!, lon[before]!, lat[after]!, lon[after]!);
    if (acrossM > LONGEST_M) continue;
    for (let extra = 0; extra <= MOST_EACH_SIDE; extra++) {
      const from = before - extra + 1;
      const to = after + extra;
      if (from < 1 || to > lat.length - 1) break;
      const window = without(positions, from, to, Math.max(0, from - WINDOW), to + WINDOW);
      if (!isWhole(window)) continue;
      for (let i = from; i < to; i++) dropped.add(i);
      break;
    }
  }
  return dropped.size === 0 ? positions : leaveOut(positions, dropped);

  function isWhole(window: Positions): boolean {
    const states = buildLattice(window, roads, graph, settings);
    return findBestChain(states, window, roads, graph, settings).moves.every(({ kind }) => kind !== 'off');
  }
}

/** Last position on roads before and first after every break between roads. */
function findBreaks(chain: BestChain, lattice: Lattice): { before: number; after: number }[] {
  const onRoad = (i: number) => (lattice.directed[chain.state[i]!] ?? -1) >= 0;
  const breaks: { before: number; after: number }[] = [];
  for (let i = 0; i < chain.moves.length; i++) {
    if (chain.moves[i]?.kind !== 'off' || !onRoad(i)) continue;
    let after = i + 1;
    while (after < chain.state.length && !onRoad(after)) after++;
    if (after < chain.state.length) breaks.push({ before: i, after });
  }
  return breaks;
}

function without(positions: Positions, from: number, to: number, first: number, last: number): Positions {
  const pick = (values: readonly number[]) => [...values.slice(first, from), ...values.slice(to, last)];
  return { lat: pick(positions.lat), lon: pick(positions.lon), healed: new Set() };
}

function leaveOut(positions: Positions, dropped: ReadonlySet<number>): Positions {
  const lat: number[] = [];
  const lon: number[] = [];
  const healed = new Set<number>();
  positions.lat.forEach((value, i) => {
    if (dropped.has(i)) {
      healed.add(lat.length - 1);
      return;
    }
    lat.push(value);
    lon.push(positions.lon[i]!);
  });
  return { lat, lon, healed };
}
