import { access } from '../../rules/access/access.ts';
import { barrier } from '../../rules/access/barrier.ts';
import type { Draft } from '../../rules/finding.ts';
import { axle } from '../../rules/limits/axle.ts';
import { height } from '../../rules/limits/height.ts';
import { length } from '../../rules/limits/length.ts';
import { mass } from '../../rules/limits/mass.ts';
import { width } from '../../rules/limits/width.ts';
import { ground } from '../../rules/road/ground.ts';
import { narrow } from '../../rules/road/narrow.ts';
import { partOfYear } from '../../rules/road/part-of-year.ts';
import { slope } from '../../rules/road/slope.ts';
import { water } from '../../rules/road/water.ts';
import type { RuleInput, SubjectRule } from '../../rules/rule.ts';
import type { Reach } from '../../tags/conditional/context.ts';
import { type AskedRoad, type Asker, askedAlone } from './asked-alone.ts';

/** The rules that read a road's own tags, every one that can bar among them. What lies over or beside it is the check's. */
const OF_ROADS: readonly SubjectRule[] = [
  height,
  width,
  length,
  mass,
  axle,
  barrier,
  ground,
  partOfYear,
  water,
  slope,
  narrow,
];
const OF_POINTS: readonly SubjectRule[] = [height, width, length, mass, axle, barrier, water];

/** The rule on who may drive there at all, and the others. */
export type Asking = 'access' | 'others';

/** Asks the checker's rules about one road, or about one point on it. */
export function rulesFor(
  asked: Omit<AskedRoad, 'reach'>,
  asker: Asker,
): (reach: Reach, asking: Asking) => Draft[] {
  const inputs = new Map<Reach, RuleInput>();
  const type = asked.nodeTags === undefined ? 'way' : 'node';
  return (reach, asking) => {
    const input = inputs.get(reach) ?? askedAlone({ ...asked, reach }, asker);
    inputs.set(reach, input);
    const rules = asking === 'access' ? [access] : type === 'way' ? OF_ROADS : OF_POINTS;
    return rules.flatMap((rule) => rule(input)).filter(({ run }) => run[0].place?.type === type);
  };
}
