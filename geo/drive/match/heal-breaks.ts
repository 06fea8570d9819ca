import { distanceM } from '../../earth/sphere.ts';
import { type BestChain, findBestChain } from './best-chain.ts';
import { type Lattice, layOut, type Matching } from './lattice.ts';
import type { Positions } from './thin-positions.ts';

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
export function healBreaks(matching: Matching, chain: BestChain): Positions {
  const { positions, lattice } = matching;
  const { lat, lon } = positions;
  const dropped = new Set<number>();
  for (const { before, after } of findBreaks(chain, lattice)) {
    const acrossM = distanceM(lat[before]!, lon[before]!, lat[after]!, lon[after]!);
    if (acrossM > LONGEST_M) continue;
    for (let extra = 0; extra <= MOST_EACH_SIDE; extra++) {
      const from = before - extra + 1;
      const to = after + extra;
      if (from < 1 || to > lat.length - 1) break;
      if (!isWhole(matching, from, to)) continue;
      for (let i = from; i < to; i++) dropped.add(i);
      break;
    }
  }
  return dropped.size === 0 ? positions : leaveOut(positions, dropped);
}

/** Whether roads alone explain the positions about from .. to when those are left out. */
function isWhole(matching: Matching, from: number, to: number): boolean {
  const { lat, lon } = matching.positions;
  const first = Math.max(0, from - WINDOW);
  const pick = (values: readonly number[]) => [
    ...values.slice(first, from),
    ...values.slice(to, to + WINDOW),
  ];
  const window = layOut({ ...matching, positions: { lat: pick(lat), lon: pick(lon), healed: new Set() } });
  return findBestChain(window).moves.every(({ kind }) => kind !== 'off');
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
