import { describe, expect, it } from 'vitest';
import { findBestChain } from '../../../../../geo/drive/match/best-chain.ts';
import { edgeCostM, exploreGap } from '../../../../../geo/drive/match/guess/explore-gap.ts';
import { fillAfter } from '../../../../../geo/drive/match/guess/fill.ts';
import { layOut } from '../../../../../geo/drive/match/lattice.ts';
import { sparseRoute } from '../../../../../geo/drive/match/match-settings.ts';
import { roadGraph } from '../../../../../geo/graph/road-graph.ts';
import { seeded } from '../../../../support/random-drives.ts';
import { type At, degrees, mapOf } from '../sketch.ts';

const SIDE = 7;
const BLOCK_M = 300;
const CLASSES = ['secondary', 'tertiary', 'residential', 'service'];

/** A town of square blocks, every street of a class and a direction by chance. */
function town(seed: number) {
  const random = seeded(seed);
  const nodes: Record<string, At> = {};
  const ways = [];
  for (let x = 0; x < SIDE; x++)
    for (let y = 0; y < SIDE; y++) {
      nodes[`${x} ${y}`] = [x * BLOCK_M + 60 * random(), y * BLOCK_M + 60 * random()];
      for (const next of [`${x + 1} ${y}`, `${x} ${y + 1}`]) {
        if (x + 1 === SIDE || y + 1 === SIDE) continue;
        const highway = CLASSES[Math.floor(random() * CLASSES.length)]!;
        const tags = random() < 0.3 ? { highway, oneway: 'yes' } : { highway };
        ways.push({ id: ways.length + 1, refs: [`${x} ${y}`, next], tags });
      }
    }
  return {
    roads: mapOf(
      { ...nodes },
      ways.filter(({ refs }) => refs.every((ref) => ref in nodes)),
    ),
    nodes,
  };
}

describe('the ways about a gap', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'are none quicker than the one filled in, and agree from both ends (town %i)',
    (seed) => {
      const { roads, nodes } = town(seed);
      const graph = roadGraph(roads);
      const ends = [nodes['0 1']!, nodes['4 5']!].map(degrees);
      const positions = {
        lat: ends.map(([lat]) => lat),
        lon: ends.map(([, lon]) => lon),
        healed: new Set<number>(),
      };
      const matching = layOut({ positions, roads, graph, settings: sparseRoute(0) });
      const fill = fillAfter(matching, findBestChain(matching), 0);
      if (fill === undefined) throw new Error('nothing was filled in');
      const { atCostM, ahead, behind } = exploreGap(matching, fill, {
        startM: 0,
        open: { start: false, end: false },
        limitM: (costM) => 2 * costM,
      });
      const best = atCostM.at(-1)!;
      const through = (directed: number) => {
        const [there, back] = [ahead.indexOf.get(directed), behind.indexOf.get(directed ^ 1)];
        if (there === undefined || back === undefined) return undefined;
        return ahead.costM[there]! + edgeCostM(matching, directed) + behind.costM[back]!;
      };
      const costs = ahead.directed.map(through).filter((cost) => cost !== undefined);
      expect(costs.length).toBeGreaterThan(5);
      expect(Math.min(...costs)).toBeGreaterThan(best - 0.1);
      for (const directed of fill.edges.slice(1, -1)) expect(through(directed)).toBeCloseTo(best, 1);
    },
  );
});
