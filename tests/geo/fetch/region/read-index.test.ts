import { describe, expect, it } from 'vitest';
import { readRegionIndex } from '../../../../geo/fetch/region/read-index.ts';
import { boxOf, readOutline } from '../../../../geo/fetch/region/read-outline.ts';
import { boxRegion, feature, indexText } from '../../../support/map-server/invented-regions.ts';

const EAST = boxRegion('east', [10, 50, 11, 51]);
const WEST = boxRegion('west', [9, 50, 10, 51]);

const read = (text: string, refuse = (_: string): string | undefined => undefined) =>
  readRegionIndex(text, refuse);

function readEntry(change: (entry: ReturnType<typeof feature>) => unknown) {
  const features = [feature(EAST), change(feature(WEST))];
  const index = read(JSON.stringify({ type: 'FeatureCollection', features }));
  if (!index.ok) throw new Error(index.error.message);
  return index.value;
}

describe('a list of regions', () => {
  it('is read with names, files and outlines, in its order', () => {
    const index = read(indexText([boxRegion('east', [10, 50, 11, 51], { parent: 'land' }), WEST]));
    expect(index).toMatchObject({ ok: true, value: { refused: [], refusedCount: 0 } });
    expect(index.ok && index.value.regions).toMatchObject([
      {
        id: 'east',
        name: 'East',
        parent: 'land',
        url: 'https://maps.example.org/east-latest.osm.pbf',
        box: { west: 10, south: 50, east: 11, north: 51 },
      },
      { id: 'west' },
    ]);
  });

  it('knows how large a region is', () => {
    const index = read(indexText([EAST]));
    // a degree each way at 50.5° on a sphere of 6,371 km: 111.195 km × 70.73 km
    expect(index.ok && index.value.regions[0]?.areaKm2).toBeCloseTo(111.195 * 70.73, -2);
  });

  it.each([
    ['a web page', '<!DOCTYPE html><html>', /is a web page, not a list of regions/u],
    ['text cut short', indexText([EAST]).slice(0, -20), /no whole JSON/u],
    ['other JSON', '{"type":"Feature"}', /is no list of regions/u],
    ['a list', '[]', /is no list of regions/u],
    ['nothing in it', '{"type":"FeatureCollection","features":[]}', /none that can be used \(it is empty\)/u],
    [
      'nothing in it but nonsense',
      '{"type":"FeatureCollection","features":[null]}',
      /none that can be used \(Entry 1 is left out: it is no region\.\)/u,
    ],
    [
      'no end of entries',
      JSON.stringify({ type: 'FeatureCollection', features: Array(7000).fill(0) }),
      /7000 entries, more than any list/u,
    ],
  ])('is refused: %s', (_, text, why) => {
    const index = read(text);
    expect(index.ok ? '' : index.error.message).toMatch(why);
  });

  it.each([
    ['without an outline', (e: object) => ({ ...e, geometry: null }), 'it has no outline'],
    [
      'a line for an outline',
      (e: object) => ({ ...e, geometry: { type: 'LineString', coordinates: [] } }),
      'it has no outline',
    ],
    [
      'an empty outline',
      (e: object) => ({ ...e, geometry: { type: 'MultiPolygon', coordinates: [] } }),
      'its outline holds no area',
    ],
    [
      'a place that is nowhere',
      (e: object) => ({
        ...e,
        geometry: {
          type: 'Polygon',
          coordinates: [
            [
              [0, 0],
              [1, 1],
              [0, 91],
              [0, 0],
            ],
          ],
        },
      }),
      'its outline holds a position that is nowhere on Earth',
    ],
    [
      'words for degrees',
      (e: object) => ({
        ...e,
        geometry: {
          type: 'Polygon',
          coordinates: [
            [
              ['0', 0],
              [1, 1],
              [0, 2],
            ],
          ],
        },
      }),
      'its outline holds a position that is nowhere on Earth',
    ],
    [
      'two corners',
      (e: object) => ({
        ...e,
        geometry: {
          type: 'Polygon',
          coordinates: [
            [
              [0, 0],
              [1, 1],
              [0, 0],
            ],
          ],
        },
      }),
      'a part of its outline has fewer than three corners',
    ],
    [
      'one place four times',
      (e: object) => ({
        ...e,
        geometry: {
          type: 'Polygon',
          coordinates: [
            [
              [0, 0],
              [0, 0],
              [0, 0],
              [0, 0],
            ],
          ],
        },
      }),
      'its outline holds no area',
    ],
    ['no name', (e: object) => ({ ...e, properties: { id: 'west' } }), 'its name is missing or odd'],
    [
      'no file',
      (e: object) => ({ ...e, properties: { id: 'west', name: 'West', urls: {} } }),
      'it names no .osm.pbf file',
    ],
  ])('costs a bad entry alone: %s', (_, change, why) => {
    const index = readEntry(change);
    expect(index.regions.map(({ id }) => id)).toEqual(['east']);
    expect(index.refused).toEqual([`Region "west" is left out: ${why}.`]);
  });

  it.each([
    ['ftp://maps.example.org/west.osm.pbf', 'is no address of an .osm.pbf'],
    ['javascript:alert(1)//.osm.pbf', 'is no address of an .osm.pbf'],
    ['https://maps.example.org/west.osh.pbf', 'is no address of an .osm.pbf'],
    ['https://maps.example.org/west-internal.osm.pbf', 'is not a public one'],
    ['https://maps.example.org/west-history.osm.pbf', 'is not a public one'],
  ])('never names a file that is not a public map: %s', (pbf, why) => {
    const index = readEntry((e) => ({ ...e, properties: { ...e.properties, urls: { pbf } } }));
    expect(index.regions).toHaveLength(1);
    expect(index.refused[0]).toContain(why);
  });

  it('leaves out what lies on a server that is not to be asked', () => {
    const index = read(
      indexText([EAST, boxRegion('west', [9, 50, 10, 51], { url: 'https://other.example.net/w.osm.pbf' })]),
      (url) => (url.includes('other') ? 'lies on another server' : undefined),
    );
    expect(index.ok && index.value.refused).toEqual([
      'Region "west" is left out: its file lies on another server.',
    ]);
  });

  it('takes a name twice once, and names only the first entries left out', () => {
    const index = read(indexText([EAST, EAST]));
    expect(index.ok && index.value.refused).toEqual([
      'Region "east" is left out: an entry before it has the same name.',
    ]);
    const many = read(
      JSON.stringify({ type: 'FeatureCollection', features: [feature(EAST), ...Array(50).fill({})] }),
    );
    expect(many).toMatchObject({ ok: true, value: { refusedCount: 50 } });
    expect(many.ok && many.value.refused).toHaveLength(10);
  });

  it('makes names from a server safe to show', () => {
    const index = readEntry((e) => ({
      ...e,
      properties: { ...e.properties, id: '__proto__', name: `\u001b[2J${'long '.repeat(30)}` },
    }));
    expect(index.regions[1]?.name).toMatch(/^·\[2Jlong .*…$/u);
    expect(index.regions[1]?.id).toBe('__proto__');
  });
});

describe('an outline', () => {
  const square = [
    [7, 50],
    [8, 50],
    [8, 51],
    [7, 51],
  ];
  const message = (type: string, coordinates: unknown) => {
    const read = readOutline(type, coordinates);
    return read.ok ? 'read' : read.error.message;
  };

  it('is closed where it is left open, and is as large as its corners', () => {
    const read = readOutline('Polygon', [square]);
    expect(read.ok && read.value[0]?.[0]).toHaveLength(5);
    expect(read.ok && boxOf(read.value)).toEqual({ west: 7, east: 8, south: 50, north: 51 });
    expect(message('MultiPolygon', [[square], [[...square, square[0]]]])).toBe('read');
  });

  it('that is none says why', () => {
    expect(message('MultiPolygon', [])).toContain('holds no area');
    expect(message('Polygon', [])).toContain('holds no area');
    expect(message('Polygon', 'here')).toContain('holds no area');
    expect(message('MultiPolygon', ['here'])).toContain('holds no area');
    expect(message('Polygon', ['here'])).toContain('no list of positions');
    expect(message('Polygon', [['here', 'there']])).toContain('nowhere on Earth');
    expect(
      message('Polygon', [
        [
          [7, 91],
          [8, 50],
          [8, 51],
        ],
      ]),
    ).toContain('nowhere on Earth');
    expect(
      message('Polygon', [
        [
          [7, 50],
          [8, 50],
        ],
      ]),
    ).toContain('fewer than three corners');
  });
});
