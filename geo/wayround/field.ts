import type { Roads } from '../roads/roads.ts';
import { turnGraph } from './graph/open-turn-graph.ts';
import type { Asker } from './price/asked-alone.ts';
import { RoadCosts } from './price/road-costs.ts';
import { type JudgeMemo, type JudgeOptions, RoadJudge } from './price/road-judge.ts';
import { RuleJudge } from './price/rule-judge.ts';
import { circleAcrossM } from './price/turn-prices.ts';
import type { Field } from './search/question.ts';

/** Vehicles whose costs are kept for one map: a fleet, and a few settings tried out. */
const MOST_KEPT = 6;

const memos = new Map<string, JudgeMemo>();
const kept = new WeakMap<Roads, Map<string, Field>>();

export interface FieldOptions extends JudgeOptions {
  /** roads are guessed at until a search's answer leads over them; left out, each is judged where it is met */
  readonly guesses?: boolean;
  /** called now and then; what it throws ends the work */
  readonly lookUp?: (() => void) | undefined;
}

/** The graph of an opened map with one vehicle's costs, kept for its next question. */
export function fieldFor(
  roads: Roads,
  asker: Asker,
  { guesses = false, lookUp, ...options }: FieldOptions,
): Field {
  const fields = kept.get(roads) ?? new Map<string, Field>();
  kept.set(roads, fields);
  const vehicle = JSON.stringify([asker.card, asker.load, asker.margins, options]);
  const key = `${guesses} ${vehicle}`;
  const known = fields.get(key);
  if (known !== undefined) return known;
  const judge = new RoadJudge(roads, asker, options, memoOf(vehicle));
  const field = {
    costs: new RoadCosts(turnGraph(roads, lookUp), roads, judge, { guesses }),
    rules: new RuleJudge(judge),
    circleM: circleAcrossM(asker.card),
  };
  keep(fields, key, field);
  return field;
}

function memoOf(key: string): JudgeMemo {
  const known = memos.get(key);
  if (known !== undefined) return known;
  const memo: JudgeMemo = {
    signatures: new Map(),
    directed: [],
    countries: new Map(),
    kinds: new Map(),
    guesses: new Map(),
    paces: new Map(),
    roads: new Map(),
    points: new Map(),
  };
  keep(memos, key, memo);
  return memo;
}

/** The oldest makes room. */
function keep<T>(map: Map<string, T>, key: string, value: T): void {
  const [oldest] = map.keys();
  if (map.size >= MOST_KEPT && oldest !== undefined) map.delete(oldest);
  map.set(key, value);
}
