import fc from 'fast-check';
import type { Tags } from '../../../geo/roads/roads.ts';
import type { PbfNode, PbfRelation, PbfWay } from '../pbf-file.ts';

/** A small map over several tiles, its elements in order of id. */
export interface RandomMap {
  readonly nodes: readonly PbfNode[];
  readonly ways: readonly PbfWay[];
  readonly relations: readonly PbfRelation[];
}

const WAY_TAGS: readonly Tags[] = [
  { highway: 'residential', name: 'Mühlgasse' },
  { highway: 'trunk', ref: 'B 1', maxheight: '3.8' },
  { highway: 'footway' },
  { highway: 'pedestrian', area: 'yes' },
  { route: 'ferry', duration: '00:20' },
  { building: 'yes' },
  { building: 'no' },
  { railway: 'rail' },
  { waterway: 'river', name: 'Aue' },
  { landuse: 'forest' },
  { natural: 'water', name: 'Weiher' },
  { tourism: 'camp_site', name: 'Am See' },
  { boundary: 'low_emission_zone' },
  { man_made: 'bridge' },
  { note: 'nothing of it' },
  {},
];
const NODE_TAGS: readonly Tags[] = [
  { barrier: 'bollard', maxwidth: '2.1' },
  { place: 'town', name: 'Ödheim' },
  { amenity: 'drinking_water' },
  { 'addr:housenumber': '3' },
  { natural: 'tree' },
];
const RELATION_TAGS: readonly Tags[] = [
  { type: 'restriction', restriction: 'no_left_turn' },
  { type: 'restriction:hgv', 'restriction:hgv': 'no_u_turn' },
  { type: 'multipolygon', natural: 'wood', name: 'Wald' },
  { type: 'multipolygon', building: 'yes' },
  { type: 'boundary', boundary: 'low_emission_zone' },
  { type: 'route', route: 'bus' },
];

/** Ids with gaps, some below zero, some far up. */
function idsOf(count: number): fc.Arbitrary<number[]> {
  const id = fc.oneof(
    { weight: 8, arbitrary: fc.integer({ min: 1, max: 500 }) },
    { weight: 1, arbitrary: fc.integer({ min: -20, max: -1 }) },
    { weight: 1, arbitrary: fc.integer({ min: 2 ** 33, max: 2 ** 33 + 50 }) },
  );
  return fc.uniqueArray(id, { minLength: 1, maxLength: count }).map((ids) => ids.toSorted((a, b) => a - b));
}

/** Ten-millionths of a degree, over three by three tiles of zoom 12 and more, many of them close together. */
const place = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: 0, max: 2_200_000 }) },
  { weight: 5, arbitrary: fc.integer({ min: 1_000_000, max: 1_050_000 }) },
);

/** Ten-millionths of a degree beyond 180 are those of the west. */
function withinTurn(lon7: number): number {
  return lon7 > 180e7 ? lon7 - 360e7 : lon7;
}

/** @param corner south-west of it, degrees */
export function randomMap(corner: { readonly lat: number; readonly lon: number }): fc.Arbitrary<RandomMap> {
  const node = (id: number): fc.Arbitrary<PbfNode> =>
    fc.tuple(place, place, fc.option(fc.constantFrom(...NODE_TAGS), { freq: 2 })).map(([lat, lon, tags]) => {
      const at = { id, lat: (corner.lat * 1e7 + lat) / 1e7, lon: withinTurn(corner.lon * 1e7 + lon) / 1e7 };
      return tags === null ? at : { ...at, tags };
    });
  return fc.tuple(idsOf(40), idsOf(20), idsOf(8)).chain(([nodeIds, wayIds, relationIds]) => {
    const ref = fc.oneof(
      { weight: 20, arbitrary: fc.constantFrom(...nodeIds) },
      { weight: 1, arbitrary: fc.constant(777_777) },
    );
    const way = (id: number): fc.Arbitrary<PbfWay> =>
      fc.record({
        id: fc.constant(id),
        refs: fc
          .tuple(fc.array(ref, { minLength: 1, maxLength: 7 }), fc.boolean())
          .map(([refs, ring]) => (ring ? [...refs, refs[0]!] : refs)),
        tags: fc.constantFrom(...WAY_TAGS),
      });
    const relation = (id: number): fc.Arbitrary<PbfRelation> =>
      fc.record({
        id: fc.constant(id),
        tags: fc.constantFrom(...RELATION_TAGS),
        members: fc.array(
          fc.record({
            type: fc.constantFrom('way' as const, 'way' as const, 'node' as const),
            id: fc.constantFrom(...wayIds),
            role: fc.constantFrom('outer', '', 'inner', 'from', 'to', 'via'),
          }),
          { maxLength: 6 },
        ),
      });
    return fc.record({
      nodes: fc.tuple(...nodeIds.map(node)),
      ways: fc.tuple(...wayIds.map(way)),
      relations: fc.tuple(...relationIds.map(relation)),
    });
  });
}

/** The same as OSM XML, each element a line, in the order that `place` gives them. */
export function xmlOf({ nodes, ways, relations }: RandomMap, place: (i: number) => number): string {
  const tagsOf = (tags: Tags = {}) =>
    Object.entries(tags)
      .map(([k, v]) => `<tag k="${k}" v="${v}"/>`)
      .join('');
  const lines = [
    ...nodes.map(
      ({ id, lat, lon, tags }) => `<node id="${id}" lat="${lat}" lon="${lon}">${tagsOf(tags)}</node>`,
    ),
    ...ways.map(
      ({ id, refs, tags }) =>
        `<way id="${id}">${refs.map((ref) => `<nd ref="${ref}"/>`).join('')}${tagsOf(tags)}</way>`,
    ),
    ...relations.map(
      ({ id, members, tags }) =>
        `<relation id="${id}">${members
          .map(({ type, id, role }) => `<member type="${type}" ref="${id}" role="${role}"/>`)
          .join('')}${tagsOf(tags)}</relation>`,
    ),
  ];
  const order = lines.map((line, i) => ({ line, at: place(i) })).sort((a, b) => a.at - b.at);
  return `<osm>${order.map(({ line }) => line).join('\n')}</osm>`;
}

/** The same as an answer of Overpass, in its order. */
export function jsonOf({ nodes, ways, relations }: RandomMap): string {
  return JSON.stringify({
    elements: [
      ...nodes.map((node) => ({ type: 'node', ...node })),
      ...ways.map(({ id, refs, tags }) => ({ type: 'way', id, nodes: refs, tags })),
      ...relations.map(({ id, members, tags }) => ({
        type: 'relation',
        id,
        members: members.map(({ type, id, role }) => ({ type, ref: id, role })),
        tags,
      })),
    ],
  });
}
