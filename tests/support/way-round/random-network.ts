import type { MapSketch } from '../build-roads.ts';

type Tags = Record<string, string>;

export const WAY_TAGS: readonly Tags[] = [
  {},
  {},
  {},
  { oneway: 'yes' },
  { oneway: '-1' },
  { access: 'destination' },
  { access: 'destination' },
  { highway: 'service', access: 'private' },
  { highway: 'service' },
  { highway: 'service' },
  { maxheight: '2.5' },
  { maxheight: '3.5' },
  { motor_vehicle: 'no' },
  { 'motor_vehicle:forward': 'no' },
];
export const NODE_TAGS: readonly Tags[] = [
  { barrier: 'bollard' },
  { barrier: 'gate', access: 'private' },
  { maxheight: '2.4' },
  { highway: 'turning_circle' },
  { highway: 'traffic_signals' },
  { access: 'no' },
];
export const RULES = [
  'no_left_turn',
  'no_right_turn',
  'no_straight_on',
  'no_u_turn',
  'only_straight_on',
  'only_left_turn',
];

/**
 * A network of 5 to 12 nodes with one-ways, restrictions by node and by way, zones, barriers, parallel roads and loops.
 * @param random numbers from 0 to 1
 */
export function randomNetwork(random: () => number): MapSketch {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const nodeCount = 5 + Math.floor(random() ** 2 * 8);
  const names = Array.from({ length: nodeCount }, (_, i) => `n${i}`);
  const nodes: Record<string, [number, number]> = {};
  names.forEach((name, i) => {
    // uneven, so that no two ways round cost the same
    nodes[name] = [
      50 + 0.0021 * Math.floor(i / 4) + 0.0007 * random(),
      7 + 0.003 * (i % 4) + 0.001 * random(),
    ];
  });
  const nodeTags: Record<string, Tags> = {};
  for (const name of names) if (random() < 0.25) nodeTags[name] = pick(NODE_TAGS);
  const wayCount = nodeCount - 1 + Math.floor(random() * 4);
  const ways = Array.from({ length: wayCount }, (_, i) => {
    const refs = [pick(names)];
    const length = 2 + Math.floor(random() * 3);
    while (refs.length < length) {
      const next = pick(names);
      if (next !== refs.at(-1)) refs.push(next);
    }
    return { id: 10 + i, refs, tags: { highway: 'residential', ...pick(WAY_TAGS) } };
  });
  const restrictions = Array.from({ length: Math.floor(random() * 5) }, () => {
    const [from, to] = [pick(ways), pick(ways)];
    const via = random() < 0.5 ? pick(from.refs) : pick(ways).id;
    return { from: from.id, via, to: to.id, tags: { restriction: pick(RULES) } };
  });
  return { nodes, nodeTags, ways, restrictions };
}
