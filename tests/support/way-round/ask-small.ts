import { DEFAULT_MARGINS } from '../../../geo/rules/rule.ts';
import { fieldFor } from '../../../geo/wayround/field.ts';
import { OPEN } from '../../../geo/wayround/price/judged.ts';
import { firstLayer, LAYERS } from '../../../geo/wayround/search/layers.ts';
import { emptyOverlay } from '../../../geo/wayround/search/overlay.ts';
import type { Question } from '../../../geo/wayround/search/question.ts';
import { searchBothWays } from '../../../geo/wayround/search/search-both-ways.ts';
import { searchForward } from '../../../geo/wayround/search/search-forward.ts';
import { roadsFrom } from '../build-roads.ts';
import { COACH_BUILT } from '../coach-built.ts';
import { seeded } from '../random-drives.ts';
import { bruteForce } from './brute-force.ts';
import { randomNetwork } from './random-network.ts';

/** A question from the end of one edge to the end of another on a field. */
export function questionBetween(field: Question['field'], from: number, to: number): Question {
  const { costs } = field;
  return {
    field,
    terms: { ferries: true },
    overlay: emptyOverlay(),
    sources: [{ state: from, layer: firstLayer(costs.kind(from).ground), costTenths: 0, timeTenths: 0 }],
    targets: statesOf(field, to).map((state) => ({
      state,
      layers: new Array<boolean>(LAYERS).fill(true),
      restTenths: costs.costTenths(to),
    })),
  };
}

/** The states that stand for an edge: itself, and its shadows. */
export function statesOf({ costs: { graph } }: Question['field'], edge: number): number[] {
  const states = [edge];
  for (let state = 2 * graph.edgeCount; state < graph.stateCount; state++)
    if (graph.edgeOf[state] === edge) states.push(state);
  return states;
}

interface Asked {
  /** by each search */
  readonly found: readonly (number | 'none')[];
  /** by trying all walks */
  readonly brute: number | 'none';
}

/** What some questions on one random network come to; left out are those with too many walks to try. */
export function askNetwork(seed: number, questions: number): Asked[] {
  const random = seeded(seed);
  const roads = roadsFrom(randomNetwork(random));
  const field = fieldFor(roads, { card: COACH_BUILT, margins: DEFAULT_MARGINS }, { prefer: 'quickest' });
  const { graph } = field.costs;
  const pick = () => Math.floor(random() * 2 * graph.edgeCount);
  const tryAll = bruteForce(field.costs);
  const asked: Asked[] = [];
  for (let i = 0; i < questions; i++) {
    const [from, to] = [pick(), pick()];
    // a drive that begins on a closed road is no question of a search
    if (from === to || field.costs.kind(from).open === OPEN.never) continue;
    const brute = tryAll(from, to);
    if (brute === undefined) continue;
    const question = questionBetween(field, from, to);
    const answers = [searchForward(question), searchBothWays(question, () => 0)];
    asked.push({
      found: answers.map((answer) => (answer.states === undefined ? 'none' : answer.costTenths)),
      brute,
    });
  }
  return asked;
}
