import { expect, it } from 'vitest';
import { DEFAULT_MARGINS } from '../../../../geo/rules/rule.ts';
import { fieldFor } from '../../../../geo/wayround/field.ts';
import { layJudged } from '../../../../geo/wayround/plan/lay-judged.ts';
import { type LaidLegs, layLegs } from '../../../../geo/wayround/plan/lay-legs.ts';
import type { PlanStop } from '../../../../geo/wayround/plan/leg-parts.ts';
import { emptyOverlay } from '../../../../geo/wayround/search/overlay.ts';
import type { Field, Question } from '../../../../geo/wayround/search/question.ts';
import { roadsFrom } from '../../../support/build-roads.ts';
import { COACH_BUILT } from '../../../support/coach-built.ts';
import { seeded } from '../../../support/random-drives.ts';
import { randomNetwork } from '../../../support/way-round/random-network.ts';

/** What a road may turn out to be only when the rules are asked. */
const SURPRISES: readonly Record<string, string>[] = [
  { surface: 'mud' },
  { tracktype: 'grade5', highway: 'track' },
  { width: '2.1' },
  { incline: '25%' },
  { ford: 'yes' },
  { smoothness: 'impassable' },
  { 'oneway:conditional': 'yes @ (07:00-09:00)' },
  { traffic_sign: 'DE:265[2.5]' },
  { winter_road: 'yes' },
];

it('a way over roads guessed at costs what it costs where every road is judged', () => {
  const random = seeded(11);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const found = { ways: 0, none: 0 };
  for (let i = 0; i < 50; i++) {
    const sketch = randomNetwork(random);
    const ways = sketch.ways.map((way) =>
      random() < 0.4 ? { ...way, tags: { ...way.tags, ...pick(SURPRISES) } } : way,
    );
    const roads = roadsFrom({ ...sketch, ways });
    const options = { prefer: pick(['quickest', 'widest'] as const) };
    const asker = { card: COACH_BUILT, margins: DEFAULT_MARGINS };
    const judged = fieldFor(roads, asker, options);
    const guessed = fieldFor(roads, asker, { ...options, guesses: true });
    for (let k = 0; k < 3; k++) {
      const stops = Array.from({ length: 2 + Math.floor(random() * 2) }, () => stopOn(judged, random));
      const plain = costOf(layLegs(stops, questionOn(judged)));
      expect(costOf(layJudged(stops, questionOn(guessed)))).toBe(plain);
      found[plain === undefined ? 'none' : 'ways']++;
    }
  }
  expect(found.ways).toBeGreaterThan(20);
  expect(found.none).toBeGreaterThan(20);
});

function stopOn({ costs }: Field, random: () => number): PlanStop {
  const edge = Math.floor(random() * costs.graph.edgeCount);
  return {
    directed: [2 * edge, 2 * edge + 1],
    atM: random() * costs.graph.lengthM[edge]!,
    awayM: 0,
    at: costs.judge.placeOf(costs.graph.tail[2 * edge]!),
    stop: random() < 0.3,
  };
}

function questionOn(field: Field): Question {
  return {
    field,
    terms: { ferries: false },
    overlay: emptyOverlay(),
    sources: [],
    targets: [],
    lookUp: undefined,
  };
}

function costOf(laid: LaidLegs): number | undefined {
  return laid.parts === undefined ? undefined : laid.costTenths;
}
