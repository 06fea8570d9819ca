import { describe, expect, it } from 'vitest';
import { roadGraph } from '../../../geo/graph/road-graph.ts';
import { searchRoads, wayTo } from '../../../geo/graph/search-roads.ts';
import type { StepCosts } from '../../../geo/graph/step-costs.ts';
import { mapOf } from '../drive/match/sketch.ts';

const FREE: StepCosts = {
  turnBackM: 0,
  forbiddenTurnM: 0,
  enterWrongWayM: 0,
  wrongWayPerM: 0,
  classPerM: [],
};

// a block: the short side a-b-d is 200 m, the long one a-c-d 400 m, and the lanes before and after
const NODES = { s: [-100, 0], a: [0, 0], b: [100, 0], d: [200, 0], c: [100, 173.2], e: [300, 0] } as const;
const SHORT = { id: 2, refs: ['a', 'b', 'd'] };
const LONG = { id: 3, refs: ['a', 'c', 'd'] };

/** OSM ids of the ways on the best way from s to the lane after d, and its metres as far as d. */
function best(
  ways: Parameters<typeof mapOf>[1],
  steps: Partial<StepCosts>,
  more?: Parameters<typeof mapOf>[2],
) {
  const roads = mapOf(NODES, [{ id: 1, refs: ['s', 'a'] }, ...ways, { id: 4, refs: ['d', 'e'] }], more);
  const graph = roadGraph(roads);
  const edgeOf = (id: number) => 2 * graph.way.findIndex((way) => roads.ways.id[way] === id);
  const reached = searchRoads(graph, { ...FREE, ...steps }, [{ directed: edgeOf(1), costM: 0, metres: 0 }], {
    limitM: 2000,
  });
  const entry = reached.indexOf.get(edgeOf(4));
  if (entry === undefined) return undefined;
  const ids = wayTo(reached, entry).edges.map((directed) => roads.ways.id[graph.way[directed >> 1]!]);
  return { ids, metres: Math.round(reached.metres[entry]!) };
}

describe('the best way', () => {
  it('is the shorter of two', () => {
    expect(best([SHORT, LONG], {})).toEqual({ ids: [2], metres: 200 });
  });

  it('is the longer one where the shorter would be driven against its one-way, once that costs enough', () => {
    const against = { ...SHORT, tags: { highway: 'residential', oneway: '-1' } };
    expect(best([against, LONG], { wrongWayPerM: 0.5 })).toEqual({ ids: [2], metres: 200 });
    expect(best([against, LONG], { wrongWayPerM: 2 })).toEqual({ ids: [3], metres: 400 });
  });

  it('tells true metres, whatever else was counted', () => {
    expect(best([SHORT], { classPerM: [7, 7, 7, 7, 7, 7] })?.metres).toBe(200);
  });

  it('does not exist where ways cross without a common node', () => {
    expect(best([{ id: 2, refs: ['a', 'b'] }], {})).toBeUndefined();
  });
});
