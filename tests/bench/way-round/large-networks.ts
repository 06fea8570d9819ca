/**
 * Searches on larger random networks against plain Dijkstra and against a graph library, both on the turn graph laid out
 * as a plain graph: forward, with a bound on what is left, and from both ends.
 * Arguments: how many towns, crossings along a side.
 */
import createGraph from 'ngraph.graph';
import path from 'ngraph.path';
import { distanceM } from '../../../geo/earth/sphere.ts';
import { DEFAULT_MARGINS } from '../../../geo/rules/rule.ts';
import { fieldFor } from '../../../geo/wayround/field.ts';
import { OPEN } from '../../../geo/wayround/price/judged.ts';
import { LAYERS } from '../../../geo/wayround/search/layers.ts';
import type { Question } from '../../../geo/wayround/search/question.ts';
import { searchBothWays } from '../../../geo/wayround/search/search-both-ways.ts';
import { searchForward } from '../../../geo/wayround/search/search-forward.ts';
import { roadsFrom } from '../../support/build-roads.ts';
import { COACH_BUILT } from '../../support/coach-built.ts';
import { seeded } from '../../support/random-drives.ts';
import { questionBetween } from '../../support/way-round/ask-small.ts';
import { type Move, movesFrom, plainDijkstra } from '../../support/way-round/plain-moves.ts';
import { randomTown } from '../../support/way-round/random-town.ts';
import { tellRow } from '../table.ts';

/** Starts in one town, and ends for each. */
const [STARTS, ENDS] = [8, 12];
/** 100 km/h, a little less for the rounding of distances: tenths of seconds a metre. */
const LEAST_PER_M = 0.995 * 0.36;

type Cost = number | 'none';

const [towns = 40, side = 18] = process.argv.slice(2).map(Number);
const took = { ours: 0, library: 0 };
let [asked, ways, differ] = [0, 0, 0];
for (let seed = 1; seed <= towns; seed++) askTown(seed);
console.log(
  `${asked} questions on ${towns} towns of ${side * side} crossings (${ways} with a way): ${differ} differ; ` +
    `searches ${took.ours.toFixed(0)} ms, library ${took.library.toFixed(0)} ms of processor`,
);
tellRow({
  work: 'ways on larger random networks',
  must: '0 differ',
  aim: '',
  measured: `${differ} of ${asked.toLocaleString('en')} (${ways.toLocaleString('en')} with a way), ${(took.ours / asked / 2).toFixed(1)} ms a search`,
  reference: `plain Dijkstra, and ngraph.path's A* on the turn graph: ${(took.library / asked).toFixed(1)} ms a search`,
});
if (differ > 0) process.exitCode = 1;

function askTown(seed: number): void {
  const random = seeded(seed);
  const roads = roadsFrom(randomTown(random, side));
  const field = fieldFor(roads, { card: COACH_BUILT, margins: DEFAULT_MARGINS }, { prefer: 'quickest' });
  const pick = () => Math.floor(random() * 2 * field.costs.graph.edgeCount);
  for (let i = 0; i < STARTS; i++) {
    const from = pick();
    if (field.costs.kind(from).open === OPEN.never) continue;
    const first = questionBetween(field, from, from);
    const start = from * LAYERS + (first.sources[0]?.layer ?? 0);
    const moves = movesFrom(first);
    const plain = plainDijkstra(moves, start);
    const find = libraryOn(moves);
    for (let k = 0; k < ENDS; k++) {
      const to = pick();
      if (to === from) continue;
      const question = questionBetween(field, from, to);
      const ends = question.targets.flatMap(({ state }) =>
        Array.from({ length: LAYERS }, (_, layer) => state * LAYERS + layer),
      );
      const wanted = least(ends.map((end) => plain.get(end) ?? 'none'));
      const began = process.cpuUsage();
      const answers = ours({ ...question, leftTenths: leftTo(question, to) });
      took.ours += process.cpuUsage(began).user / 1000;
      const begun = process.cpuUsage();
      const library = least(ends.filter((end) => moves.has(end)).map((end) => find(start, end)));
      took.library += process.cpuUsage(begun).user / 1000;
      asked++;
      if (wanted !== 'none') ways++;
      if ([...answers, library].every((each) => each === wanted)) continue;
      differ++;
      console.log(
        `    town ${seed}, ${from} to ${to}: ${answers.join(', ')}, library ${library}, plain ${wanted}`,
      );
    }
  }
}

/** Forward with the bound, and from both ends. */
function ours(question: Question): Cost[] {
  return [searchForward(question), searchBothWays(question, () => 0)].map((answer) =>
    answer.states === undefined ? 'none' : answer.costTenths,
  );
}

function leftTo({ field: { costs } }: Question, to: number): (node: number) => number {
  const { lat, lon } = costs.roads.nodes;
  const end = costs.graph.tail[to]!;
  return (node) => Math.floor(LEAST_PER_M * distanceM(lat[node]!, lon[node]!, lat[end]!, lon[end]!));
}

function least(costs: readonly Cost[]): Cost {
  const told = costs.filter((cost): cost is number => cost !== 'none');
  return told.length === 0 ? 'none' : Math.min(...told);
}

/** The same moves given to the library; its answer's cost is summed here, since it tells the way alone. */
function libraryOn(moves: ReadonlyMap<number, readonly Move[]>): (start: number, end: number) => Cost {
  const graph = createGraph<undefined, number>();
  for (const key of moves.keys()) graph.addNode(key);
  // of several moves between two places the dearer ones are never driven, and the library keeps one link for each pair
  const cheapest = new Map<string, { from: number; move: Move }>();
  for (const [from, out] of moves)
    for (const move of out) {
      const key = `${from} ${move.to}`;
      if (move.costTenths < (cheapest.get(key)?.move.costTenths ?? Number.POSITIVE_INFINITY))
        cheapest.set(key, { from, move });
    }
  for (const { from, move } of cheapest.values()) graph.addLink(from, move.to, move.costTenths);
  const finder = path.aStar(graph, { oriented: true, distance: (_, __, link) => link.data });
  return (start, end) => {
    if (start === end) return 0;
    const found = finder.find(start, end);
    if (found.length === 0) return 'none';
    const keys = found.map(({ id }) => Number(id)).reverse();
    return keys
      .slice(1)
      .reduce((sum, key, i) => sum + (cheapest.get(`${keys[i]} ${key}`)?.move.costTenths ?? 0), 0);
  };
}
