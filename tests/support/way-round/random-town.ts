import type { MapSketch } from '../build-roads.ts';
import { NODE_TAGS, RULES, WAY_TAGS } from './random-network.ts';

type Tags = Record<string, string>;

/**
 * A town of `side` by `side` crossings with one-ways, zones, barriers and restrictions by node and by way, about as
 * dense as in a real one.
 * @param random numbers from 0 to 1
 */
export function randomTown(random: () => number, side: number): MapSketch {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const name = (x: number, y: number) => `${x},${y}`;
  const nodes: Record<string, [number, number]> = {};
  const nodeTags: Record<string, Tags> = {};
  for (let x = 0; x < side; x++)
    for (let y = 0; y < side; y++) {
      nodes[name(x, y)] = [50 + 0.002 * y + 0.0007 * random(), 7 + 0.003 * x + 0.001 * random()];
      if (random() < 0.08) nodeTags[name(x, y)] = pick(NODE_TAGS);
    }
  const ways: { id: number; refs: string[]; tags: Tags }[] = [];
  const lay = (refs: string[]) => {
    const tags = random() < 0.35 ? pick(WAY_TAGS) : {};
    ways.push({ id: 10 + ways.length, refs, tags: { highway: 'residential', ...tags } });
  };
  for (let x = 0; x < side; x++)
    for (let y = 0; y < side; y++) {
      if (x + 1 < side && random() < 0.9) lay([name(x, y), name(x + 1, y)]);
      if (y + 2 < side && y % 2 === 0 && random() < 0.9) lay([name(x, y), name(x, y + 1), name(x, y + 2)]);
    }
  const at = new Map<string, number[]>();
  ways.forEach(({ refs }, way) => {
    for (const ref of refs) at.set(ref, [...(at.get(ref) ?? []), way]);
  });
  const meeting = (way: number) => ways[pick(at.get(pick(ways[way]?.refs ?? [])) ?? [way])] ?? ways[0]!;
  const restrictions = Array.from({ length: side * side * 0.2 }, () => {
    const from = pick(ways);
    const via = meeting(from.id - 10);
    const byWay = random() < 0.4;
    const to = meeting(via.id - 10);
    const node = from.refs.find((ref) => via.refs.includes(ref)) ?? pick(from.refs);
    return byWay
      ? { from: from.id, via: via.id, to: to.id, tags: { restriction: pick(RULES) } }
      : { from: from.id, via: node, to: via.id, tags: { restriction: pick(RULES) } };
  });
  return { nodes, nodeTags, ways, restrictions };
}
