import { expect, it } from 'vitest';
import { DEFAULT_MARGINS } from '../../../../geo/rules/rule.ts';
import { fieldFor } from '../../../../geo/wayround/field.ts';
import { OPEN } from '../../../../geo/wayround/price/judged.ts';
import { LAYERS } from '../../../../geo/wayround/search/layers.ts';
import { searchBothWays } from '../../../../geo/wayround/search/search-both-ways.ts';
import { searchForward } from '../../../../geo/wayround/search/search-forward.ts';
import { roadsFrom } from '../../../support/build-roads.ts';
import { COACH_BUILT } from '../../../support/coach-built.ts';
import { seeded } from '../../../support/random-drives.ts';
import { questionBetween } from '../../../support/way-round/ask-small.ts';
import { movesFrom, plainDijkstra } from '../../../support/way-round/plain-moves.ts';
import { randomTown } from '../../../support/way-round/random-town.ts';

it('a search across a town costs what plain Dijkstra on its turn graph does', () => {
  const random = seeded(5);
  const roads = roadsFrom(randomTown(random, 9));
  const field = fieldFor(roads, { card: COACH_BUILT, margins: DEFAULT_MARGINS }, { prefer: 'quickest' });
  const open = (edge: number) => field.costs.kind(edge).open === OPEN.always;
  const edges = Array.from({ length: 2 * field.costs.graph.edgeCount }, (_, i) => i).filter(open);
  const pick = () => edges[Math.floor(random() * edges.length)] ?? 0;
  let ways = 0;
  for (let i = 0; i < 5; i++) {
    const from = pick();
    const first = questionBetween(field, from, from);
    const plain = plainDijkstra(movesFrom(first), from * LAYERS + (first.sources[0]?.layer ?? 0));
    for (let k = 0; k < 12; k++) {
      const question = questionBetween(field, from, pick());
      const costs = question.targets.flatMap(({ state }) =>
        Array.from({ length: LAYERS }, (_, layer) => plain.get(state * LAYERS + layer) ?? Infinity),
      );
      if (question.targets[0]?.state === from) continue;
      for (const answer of [searchForward(question), searchBothWays(question, () => 0)])
        expect(answer.states === undefined ? Infinity : answer.costTenths).toBe(Math.min(...costs));
      if (Number.isFinite(Math.min(...costs))) ways++;
    }
  }
  expect(ways).toBeGreaterThan(20);
});
