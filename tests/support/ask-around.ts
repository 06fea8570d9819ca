import type { Finding } from '../../geo/report/report.ts';
import type { Tags } from '../../geo/roads/roads.ts';
import { buildSegmentIndex } from '../../geo/roads/segment-index.ts';
import type { SubjectRule } from '../../geo/rules/rule.ts';
import type { VehicleCard } from '../../geo/vehicle/card.ts';
import { ask, COACHBUILT, type WhereWhen } from './ask.ts';
import { driveOn, type Step, type TestMap, type TestWay, testMap } from './drive-on.ts';

/** A test map whose index finds by geometry, as the real one does. */
export function mapWithSurroundings(
  ways: readonly TestWay[],
  nodeTags: Readonly<Record<string, Tags>> = {},
): TestMap {
  const map = testMap(ways, nodeTags);
  const { roads } = map;
  return { ...map, roads: { ...roads, index: buildSegmentIndex(roads.nodes, roads.ways) } };
}

export interface Scene extends WhereWhen {
  readonly steps?: readonly Step[];
  readonly nodeTags?: Readonly<Record<string, Tags>>;
  readonly card?: VehicleCard;
}

/** What a subject says about way 1 (or the steps given) among its surroundings. */
export function askAround(rule: SubjectRule, ways: readonly TestWay[], scene: Scene = {}): Finding[] {
  const map = mapWithSurroundings(ways, scene.nodeTags);
  return ask(rule, map, driveOn(map, scene.steps ?? [1]), scene.card ?? COACHBUILT, scene);
}

/** Way 1, a straight road of 500 m running east. */
export function road(tags: Tags): TestWay {
  return { id: 1, nodes: ['0,0', '5,0'], tags: { highway: 'unclassified', ...tags } };
}

/** A line across that road, so many hundreds of metres east of its beginning. */
export function across(id: number, x: number, tags: Tags): TestWay {
  const around = tags['highway'] === undefined && tags['route'] !== 'ferry';
  return { id, nodes: [`${x},-1`, `${x},1`], tags, around };
}

/** A closed area around a rectangle, in hundreds of metres. */
export function area(
  id: number,
  west: number,
  south: number,
  east: number,
  north: number,
  tags: Tags,
): TestWay {
  const corners = [`${west},${south}`, `${east},${south}`, `${east},${north}`, `${west},${north}`];
  return { id, nodes: [...corners, corners[0] as string], tags, around: true };
}
