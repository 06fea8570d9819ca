import type { PbfNode, PbfRelation, PbfWay } from '../../support/pbf-file.ts';
import { escaped } from './gpx.ts';
import { hostileNumber } from './hostile.ts';
import type { Random } from './random.ts';
import { randomTags } from './tags.ts';

/** A few streets crossing each other near 50° N 7° E, with tags of every kind. */
export interface SmallMap {
  readonly nodes: readonly PbfNode[];
  readonly ways: readonly PbfWay[];
  readonly relations: readonly PbfRelation[];
}

export function smallMap(random: Random): SmallMap {
  const nodes = Array.from({ length: 6 + random.below(20) }, (_, i) => ({
    id: id(random, i + 1),
    lat: random.chance(0.02) ? hostileNumber(random) % 90 : 50 + (i % 5) * 0.001,
    lon: random.chance(0.02) ? hostileNumber(random) % 180 : 7 + Math.floor(i / 5) * 0.001,
    ...(random.chance(0.2) ? { tags: randomTags(random, 'node') } : {}),
  }));
  const ids = nodes.map((node) => node.id);
  const ways = Array.from({ length: 1 + random.below(6) }, (_, i) => ({
    id: id(random, i + 1),
    refs: Array.from({ length: 2 + random.below(6) }, () => (random.chance(0.03) ? 999 : random.pick(ids))),
    tags: randomTags(random, 'way'),
  }));
  const wayIds = ways.map((way) => way.id);
  const relations = Array.from({ length: random.below(3) }, (_, i) => ({
    id: i + 1,
    members: [
      { type: 'way' as const, id: random.pick(wayIds), role: 'from' },
      { type: 'node' as const, id: random.pick(ids), role: random.pick(['via', '', 'to']) },
      { type: 'way' as const, id: random.pick(wayIds), role: 'to' },
    ],
    tags: {
      type: 'restriction',
      restriction: random.pick(['no_left_turn', 'only_straight_on', 'no_u_turn', '']),
    },
  }));
  return { nodes, ways, relations };
}

const id = (random: Random, usual: number): number =>
  random.chance(0.02) ? Math.abs(Math.trunc(hostileNumber(random))) % 2 ** 53 : usual;

export function osmXml({ nodes, ways, relations }: SmallMap, random: Random): string {
  const tags = (of: Readonly<Record<string, string>> = {}) =>
    Object.entries(of)
      .map(([k, v]) => `<${random.chance(0.003) ? 'tbg' : 'tag'} k="${escaped(k)}" v="${escaped(v)}"/>`)
      .join('');
  const body = [
    ...nodes.map((n) => `<node id="${n.id}" lat="${n.lat}" lon="${n.lon}">${tags(n.tags)}</node>`),
    ...ways.map(
      (w) => `<way id="${w.id}">${w.refs.map((ref) => `<nd ref="${ref}"/>`).join('')}${tags(w.tags)}</way>`,
    ),
    ...relations.map(
      (r) =>
        `<relation id="${r.id}">${r.members.map((m) => `<member type="${m.type}" ref="${m.id}" role="${m.role}"/>`).join('')}${tags(r.tags)}</relation>`,
    ),
  ];
  return `<?xml version="1.0" encoding="UTF-8"?>\n<osm version="0.6">${body.join('\n')}</osm>\n`;
}

export function overpassAnswer({ nodes, ways, relations }: SmallMap): unknown {
  return {
    version: 0.6,
    generator: 'Overpass API',
    osm3s: { timestamp_osm_base: '2026-01-01T00:00:00Z', copyright: 'ODbL' },
    elements: [
      ...nodes.map((node) => ({ type: 'node', ...node })),
      ...ways.map(({ refs, ...way }) => ({ type: 'way', ...way, nodes: refs })),
      ...relations.map(({ members, ...relation }) => ({
        type: 'relation',
        ...relation,
        members: members.map(({ id: ref, ...member }) => ({ ...member, ref })),
      })),
    ],
  };
}
