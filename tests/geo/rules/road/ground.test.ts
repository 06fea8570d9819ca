import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { ground } from '../../../../geo/rules/road/ground.ts';
import { askDrive, askRoad } from '../../../support/ask.ts';
import { area, askAround, road } from '../../../support/ask-around.ts';
import { testMap } from '../../../support/drive-on.ts';

const said = (tags: Tags) =>
  askRoad(ground, tags).map(({ level, folded, say }) => `${level}${folded ? ' folded' : ''}: ${say}`);

describe('ground that a front-driven 3.5 t has to mind', () => {
  it.each<[Tags, RegExp]>([
    [{ surface: 'grass' }, /^tight: 500 m of soft ground \(surface=grass\)/],
    [{ surface: 'ground' }, /^tight: .*soft/],
    [{ surface: 'asphalt;dirt' }, /^tight: .*soft/],
    [{ tracktype: 'grade4' }, /^tight: .*soft/],
    [{ surface: 'mud' }, /^tight: .*not carry 3\.5 t/],
    [{ surface: 'sand' }, /^tight: .*not carry/],
    [{ tracktype: 'grade5' }, /^tight: .*not carry/],
    [{ smoothness: 'very_bad' }, /^tight: .*very rough/],
    [{ smoothness: 'horrible', surface: 'asphalt' }, /^tight: .*very rough/],
    [{ smoothness: 'impassable' }, /^tight: .*impassable/],
    [{ highway: 'track' }, /^care: .*does not tell its ground/],
  ])('%o is said', (tags, text) => {
    expect(said(tags)).toEqual([expect.stringMatching(text)]);
  });

  it.each<Tags>([
    { surface: 'gravel' },
    { surface: 'unpaved' },
    { tracktype: 'grade3' },
    { smoothness: 'bad' },
  ])('%o is loose or uneven: counted, not shown', (tags) => {
    expect(said(tags)).toEqual([expect.stringMatching(/^care folded/)]);
  });

  it.each<Tags>([
    {},
    { surface: 'asphalt' },
    { surface: 'concrete:plates' },
    { surface: 'compacted' },
    { surface: 'fine_gravel', highway: 'track' },
    { surface: 'sett' },
    { surface: 'grass_paver' },
    { tracktype: 'grade1', highway: 'track' },
    { smoothness: 'intermediate' },
    { surface: 'asphalt', tracktype: 'grade5' },
    { 'cycleway:surface': 'grass', 'sidewalk:surface': 'mud' },
    { surface: 'constructor' },
  ])('%o is firm', (tags) => {
    expect(said(tags)).toEqual([]);
  });

  it('a soft lane with a few metres of asphalt in it is one finding', () => {
    const soft: Tags = { highway: 'track', surface: 'dirt' };
    const map = testMap([
      { id: 1, nodes: ['0,0', '2,0'], tags: soft },
      { id: 2, nodes: ['2,0', '2.5,0'], tags: { highway: 'track', surface: 'asphalt' } },
      { id: 3, nodes: ['2.5,0', '5,0'], tags: soft },
    ]);
    const found = askDrive(ground, map, [1, 2, 3]);
    expect(found.map(({ osm }) => osm.map(({ id }) => id))).toEqual([[1, 3]]);
    expect(found[0]?.say).toMatch(/^450 m of soft ground/);
    expect(found[0]?.toM).toBeCloseTo(500, 0);
  });
});

describe('land beneath', () => {
  const meadow = area(9, -1, -1, 6, 1, { landuse: 'meadow' });

  it('an untagged service road on a meadow or a beach may be soft: care; one with a surface is what it says', () => {
    const on = (tags: Tags, land = meadow) =>
      askAround(ground, [road(tags), land]).map(({ level, kind, say }) => `${level} ${kind}: ${say}`);
    expect(on({ highway: 'service' })).toEqual([
      expect.stringMatching(/^care may be soft: .* may be soft.*\(landuse=meadow\)/),
    ]);
    expect(on({ highway: 'service' }, area(9, -1, -1, 6, 1, { natural: 'beach' }))).toHaveLength(1);
    expect(
      on({ highway: 'service' }, area(9, -1, -1, 6, 1, { tourism: 'camp_site', surface: 'mud' })),
    ).toEqual([expect.stringMatching(/^tight soft:/)]);
    expect(on({ highway: 'service', surface: 'asphalt' })).toEqual([]);
    expect(on({ highway: 'residential' })).toEqual([]);
    expect(on({ highway: 'service' }, area(9, -1, 2, 6, 3, { landuse: 'meadow' }))).toEqual([]);
  });

  it.each(['parking_aisle', 'driveway', 'drive-through', 'alley'])('tells nothing of a %s', (service) => {
    expect(askAround(ground, [road({ highway: 'service', service }), meadow])).toEqual([]);
  });

  it('tells nothing in a built-up area', () => {
    for (const landuse of ['residential', 'commercial', 'retail', 'industrial']) {
      const town = area(8, -3, -3, 9, 3, { landuse });
      expect(askAround(ground, [road({ highway: 'service' }), meadow, town])).toEqual([]);
    }
    const town = area(8, -3, -3, 9, 3, { landuse: 'residential' });
    const site = area(9, -1, -1, 6, 1, { tourism: 'caravan_site', surface: 'grass' });
    expect(askAround(ground, [road({ highway: 'service' }), site, town])).toMatchObject([{ kind: 'soft' }]);
  });

  it('with a soft surface of its own leaves a guess, that of a site is the road’s', () => {
    const grass = area(9, -1, -1, 6, 1, { landuse: 'grass', surface: 'grass' });
    expect(askAround(ground, [road({ highway: 'service' }), grass])).toMatchObject([
      { level: 'care', kind: 'may be soft' },
    ]);
  });
});

it('of ground that changes at every piece three tags are named', () => {
  const surfaces = ['grass', 'ground', 'dirt', 'earth'];
  const ways = surfaces.map((surface, i) => ({
    id: i + 1,
    nodes: [`${i * 5},0`, `${i * 5 + 5},0`],
    tags: { highway: 'residential', surface },
  }));
  const [found] = askDrive(ground, testMap(ways), [1, 2, 3, 4]);
  expect(found?.say).toContain('(surface=grass, surface=ground, surface=dirt and more)');
});
