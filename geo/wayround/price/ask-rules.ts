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
import type { SubjectRule } from '../../rules/rule.ts';
import { type AskedRoad, type Asker, askedAlone } from './asked-alone.ts';

/** The rules that read a road's own tags, every one that can bar among them. What lies over or beside it is the check's. */
const OF_ROADS: readonly SubjectRule[] = [
  height,
  width,
  length,
  mass,
  axle,
  access,
  barrier,
  ground,
  partOfYear,
  water,
  slope,
  narrow,
];
const OF_POINTS: readonly SubjectRule[] = [height, width, length, mass, axle, access, barrier, water];

/** What the checker's rules say of one road, or of one point on it. */
export function askRules(asked: AskedRoad, asker: Asker): Draft[] {
  const input = askedAlone(asked, asker);
  const type = asked.nodeTags === undefined ? 'way' : 'node';
  const rules = type === 'way' ? OF_ROADS : OF_POINTS;
  return rules.flatMap((rule) => rule(input)).filter(({ run }) => run[0].place?.type === type);
}
