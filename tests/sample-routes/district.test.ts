import { readdirSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { undeclaredCrossings } from './crossings.ts';
import { type MapFile, readDistrict, SAMPLES } from './read-district.ts';

let map: MapFile;
beforeAll(async () => {
  map = await readDistrict();
});

type Wanted = Readonly<Record<string, string | RegExp>>;

function carries(tags: Readonly<Record<string, string>>, wanted: Wanted): boolean {
  return Object.entries(wanted).every(([key, value]) => {
    const found = tags[key];
    return found !== undefined && (value instanceof RegExp ? value.test(found) : value === found);
  });
}

/** What the district has to show, by the tags that say it. */
const ON_WAYS: readonly (readonly [string, Wanted])[] = [
  ['a trunk road with two carriageways', { highway: 'trunk', oneway: 'yes' }],
  ['slip roads', { highway: 'trunk_link', oneway: 'yes' }],
  ['a roundabout', { junction: 'roundabout' }],
  ['A roads', { highway: 'primary', ref: /./ }],
  ['B roads', { highway: 'secondary', ref: /./ }],
  ['one-way streets', { highway: /^(residential|tertiary|unclassified)$/, oneway: 'yes' }],
  ['a railway on embankments', { railway: 'rail', embankment: 'yes' }],
  ['a railway on bridges', { railway: 'rail', bridge: 'yes', layer: '1' }],
  ['a low arch', { highway: /./, maxheight: /./ }],
  ['a weak bridge', { highway: /./, bridge: 'yes', maxweight: '3' }],
  ['a width limit', { highway: /./, maxwidth: /./ }],
  ['a steep road', { highway: /./, incline: /%$/ }],
  ['hours for motor vehicles', { 'motor_vehicle:conditional': /@/ }],
  ['a weight limit by the hour', { 'maxweight:conditional': /@/ }],
  ['a limit on one lane', { highway: /./, 'maxheight:lanes': /\|/ }],
  ['a ferry', { route: 'ferry' }],
  ['water', { natural: 'water' }],
  ['woods', { natural: 'wood' }],
  ['rows of trees', { natural: 'tree_row' }],
  ['buildings', { building: /./ }],
  ['a camp site', { tourism: 'camp_site' }],
  ['a car park', { amenity: 'parking' }],
  ['private roads', { highway: /./, access: 'private' }],
  ['roads for access only', { highway: /./, motor_vehicle: 'destination' }],
  ['tracks', { highway: 'track', surface: /./ }],
  ['a speed limit in the town', { highway: /./, maxspeed: '20 mph' }],
];

const ON_NODES: readonly (readonly [string, Wanted])[] = [
  ['a town', { place: 'town', name: /./ }],
  ['villages', { place: 'village', name: /./ }],
  ['passing places', { highway: 'passing_place' }],
  ['a mini-roundabout', { highway: 'mini_roundabout' }],
  ['posts', { barrier: 'bollard', 'maxwidth:physical': /./ }],
  ['a height bar', { barrier: 'height_restrictor', maxheight: '2.1' }],
  ['gates', { barrier: 'gate' }],
  ['a level crossing', { railway: 'level_crossing' }],
  ['humps', { traffic_calming: 'hump' }],
  ['a ford', { ford: 'yes' }],
  ['fuel', { amenity: 'fuel' }],
  ['water to fill up', { amenity: 'water_point' }],
  ['a dump point', { amenity: 'sanitary_dump_station' }],
];

describe('The invented district', () => {
  it.each(ON_WAYS)('has %s', (_, wanted) => {
    expect(map.ways.some((way) => carries(way.tags, wanted))).toBe(true);
  });

  it.each(ON_NODES)('has %s', (_, wanted) => {
    expect([...map.nodes.values()].some((node) => carries(node.tags, wanted))).toBe(true);
  });

  it('has turn restrictions from road to road by way of a common node', () => {
    const ways = new Map(map.ways.map((way) => [way.id, way]));
    const restrictions = map.relations.filter((relation) => relation.tags['type'] === 'restriction');
    expect(restrictions.length).toBeGreaterThan(0);
    for (const { members } of restrictions) {
      const by = (role: string) => members.find((member) => member.role === role);
      const via = by('via')?.ref;
      for (const role of ['from', 'to']) {
        const refs = ways.get(by(role)?.ref ?? 0)?.refs ?? [];
        expect([refs[0], refs.at(-1)]).toContain(via);
      }
    }
  });

  it('has 1,500 ways or more', () => {
    expect(map.ways.length).toBeGreaterThanOrEqual(1500);
  });

  it('takes less than a megabyte with its drives, vehicles and loads', () => {
    const files = ['drives', 'vehicles', 'loads'].flatMap((folder) =>
      readdirSync(resolve(SAMPLES, folder)).map((name) => `${folder}/${name}`),
    );
    const bytes = ['district.osm.pbf', 'district.osm.gz', ...files].map(
      (name) => statSync(resolve(SAMPLES, name)).size,
    );
    expect(bytes.reduce((a, b) => a + b)).toBeLessThan(1_000_000);
  });

  it('lies in the open Atlantic, more than 500 km from any land', () => {
    for (const { lat, lon } of map.nodes.values()) {
      expect(lat).toBeGreaterThan(47.4);
      expect(lat).toBeLessThan(47.6);
      expect(lon).toBeGreaterThan(-20.2);
      expect(lon).toBeLessThan(-19.8);
    }
  });

  it('names only nodes that are there, and every way has two or more', () => {
    for (const way of map.ways) {
      expect(way.refs.length, `way ${way.id}`).toBeGreaterThanOrEqual(2);
      for (const ref of way.refs) expect(map.nodes.has(ref), `way ${way.id}`).toBe(true);
    }
  });

  it('declares every crossing: a common node, or a bridge or tunnel on another level', () => {
    expect(undeclaredCrossings(map)).toEqual([]);
  });

  it('hangs together: all but a few roads open to motor vehicles can be reached from the high street', () => {
    const roads = map.ways.filter((way) =>
      carries(way.tags, {
        highway: /^(trunk|primary|secondary|tertiary|unclassified|residential|service|track)(_link)?$/,
      }),
    );
    const at = new Map<number, number[]>();
    roads.forEach((way, i) => {
      for (const ref of way.refs) at.set(ref, [...(at.get(ref) ?? []), i]);
    });
    const start = roads.findIndex((way) => way.tags['name'] === 'High Street');
    const seen = new Set([start]);
    const queue = [start];
    for (let i = queue.pop(); i !== undefined; i = queue.pop())
      for (const ref of roads[i]?.refs ?? [])
        for (const next of at.get(ref) ?? [])
          if (!seen.has(next)) {
            seen.add(next);
            queue.push(next);
          }
    expect(seen.size / roads.length).toBeGreaterThan(0.97);
  });
});
