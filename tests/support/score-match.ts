import type { Drive } from '../../geo/drive/drive.ts';
import { roadGraph } from '../../geo/graph/road-graph.ts';
import type { Roads } from '../../geo/roads/roads.ts';

/** Metres driven of each directed edge of the road graph. */
export type Driven = ReadonlyMap<number, number>;

export function drivenOf(drive: Drive, roads: Roads): Driven {
  const graph = roadGraph(roads);
  const driven = new Map<number, number>();
  for (const leg of drive.legs) {
    if (leg.kind !== 'stretch') continue;
    const low = Math.min(leg.alongFromM, leg.alongToM);
    const high = Math.max(leg.alongFromM, leg.alongToM);
    const last = roads.ways.start[leg.way + 1]! - 1;
    for (let ref = roads.ways.start[leg.way]!; ref < last; ref++) {
      const metres = Math.min(high, graph.alongM[ref + 1]!) - Math.max(low, graph.alongM[ref]!);
      if (metres <= 0) continue;
      const directed = 2 * graph.edgeOfSegment[ref]! + (leg.forward ? 0 : 1);
      driven.set(directed, (driven.get(directed) ?? 0) + metres);
    }
  }
  return driven;
}

export interface Score {
  /** metres of the true drive matched on the right way in the right direction */
  readonly rightM: number;
  /** true, but not matched */
  readonly missedM: number;
  /** matched, but not true */
  readonly addedM: number;
}

/** Compares a match with the truth, edge by edge with direction, as often as each is driven. */
export function scoreMatch(truth: Driven, matched: Driven): Score {
  let [rightM, missedM, addedM] = [0, 0, 0];
  for (const [directed, trueM] of truth) {
    const right = Math.min(trueM, matched.get(directed) ?? 0);
    rightM += right;
    missedM += trueM - right;
  }
  for (const [directed, metres] of matched) addedM += Math.max(0, metres - (truth.get(directed) ?? 0));
  return { rightM, missedM, addedM };
}
