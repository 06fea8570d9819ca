import { describe, expect, it } from 'vitest';
import {
  chooseRegions,
  type RegionChoice,
  regionsToAskAbout,
} from '../../../../geo/fetch/region/choose-regions.ts';
import { drawThrough } from '../../../../geo/fetch/region/drawn-through.ts';
import { readRegionIndex } from '../../../../geo/fetch/region/read-index.ts';
import {
  boxRegion,
  type Drawn,
  indexText,
  lineThrough,
  type Places,
} from '../../../support/map-server/invented-regions.ts';

type Line = [Places, ...Places[]];

function drawn(regions: readonly Drawn[], ...line: Line) {
  const index = readRegionIndex(indexText(regions), () => undefined);
  if (!index.ok) throw new Error(index.error.message);
  return drawThrough(index.value, lineThrough(...line));
}

/** @param megabytes by region id */
function chosen(
  regions: readonly Drawn[],
  megabytes: Readonly<Record<string, number>>,
  ...line: Line
): RegionChoice {
  const sizes = new Map(Object.entries(megabytes).map(([id, mb]) => [id, mb * 1e6]));
  return chooseRegions(drawn(regions, ...line), { sizes });
}

const ids = ({ regions }: RegionChoice) => regions.map(({ region }) => region.id);
const km = (m: number) => Math.round(m / 1000);
const left = ({ leftOut }: RegionChoice) =>
  leftOut.map(({ span, within }) => `${km(span.toM - span.fromM)} km, ${within?.region.id ?? 'no region'}`);

/** Two neighbours of a continent that holds a third besides. */
const NORTH = boxRegion('north', [8, 50, 10, 51], { parent: 'continent' });
const MIDDLE = boxRegion('middle', [10, 50, 12, 51], { parent: 'continent' });
const SOUTH = boxRegion('south', [12, 50, 14, 51], { parent: 'continent' });
const CONTINENT = boxRegion('continent', [7, 49, 15, 52]);
const THREE = [CONTINENT, NORTH, MIDDLE, SOUTH];
const MB = { continent: 9000, north: 300, middle: 500, south: 400 };

describe('the regions of a drive', () => {
  it('are the one it lies in', () => {
    const choice = chosen(THREE, MB, [
      [8.2, 50.5],
      [9.5, 50.6],
    ]);
    expect(ids(choice)).toEqual(['north']);
    expect(choice).toMatchObject({ bytes: 300e6, guessed: false, leftOut: [] });
  });

  it('are two neighbours where it crosses a border, not the continent that holds both', () => {
    const choice = chosen(THREE, MB, [
      [9.5, 50.5],
      [10.5, 50.5],
    ]);
    expect(ids(choice)).toEqual(['north', 'middle']);
    expect(choice.regions.map(({ coversM }) => km(coversM))).toEqual([35, 35]);
    expect(left(choice)).toEqual([]);
  });

  it('stand in the order of the drive', () => {
    expect(
      ids(
        chosen(THREE, MB, [
          [13, 50.5],
          [9, 50.5],
        ]),
      ),
    ).toEqual(['south', 'middle', 'north']);
  });

  it('are the whole where its parts cost more together', () => {
    expect(
      ids(
        chosen(THREE, { ...MB, continent: 900 }, [
          [8.5, 50.5],
          [13.5, 50.5],
        ]),
      ),
    ).toEqual(['continent']);
  });

  it('leave out the water between two of them, and say which region would hold it', () => {
    const islands = [CONTINENT, NORTH, SOUTH];
    const choice = chosen(islands, MB, [
      [9, 50.5],
      [13, 50.5],
    ]);
    expect(ids(choice)).toEqual(['north', 'south']);
    expect(left(choice)).toEqual(['141 km, continent']);
  });

  it('hold the end of a drive, though only a large region has it', () => {
    const choice = chosen([CONTINENT, NORTH, SOUTH], MB, [
      [9, 50.5],
      [11, 50.5],
    ]);
    expect(ids(choice)).toEqual(['continent']);
    expect(left(choice)).toEqual([]);
  });

  it('leave out a narrow strip that old outlines leave between neighbours', () => {
    const stale = [CONTINENT, NORTH, boxRegion('middle', [10.0125, 50, 12, 51])];
    const choice = chosen(stale, MB, [
      [9.5, 50.5],
      [10.5, 50.5],
    ]);
    expect(ids(choice)).toEqual(['north', 'middle']);
    expect(left(choice)).toEqual(['1 km, continent']);
  });

  it('leave out a narrow strip that a dearer region of another cut would hold', () => {
    const stale = [
      NORTH,
      boxRegion('middle', [10.0125, 50, 12, 51]),
      boxRegion('mountains', [9.9, 45, 10.1, 60]),
    ];
    const choice = chosen(stale, { north: 300, middle: 500, mountains: 2900 }, [
      [9.5, 50.5],
      [10.5, 50.5],
    ]);
    expect(ids(choice)).toEqual(['north', 'middle']);
    expect(left(choice)).toEqual(['1 km, mountains']);
  });

  it('hold a narrow corner of a neighbour that costs little', () => {
    const corner = [
      NORTH,
      boxRegion('middle', [10.0125, 50, 12, 51]),
      boxRegion('tiny', [10, 50, 10.0125, 51]),
    ];
    const choice = chosen(corner, { north: 300, middle: 500, tiny: 2 }, [
      [9.5, 50.5],
      [10.5, 50.5],
    ]);
    expect(ids(choice)).toEqual(['north', 'tiny', 'middle']);
  });

  it('take a city apart from its county only where that is cheaper', () => {
    const county = boxRegion('county', [8, 50, 10, 51]);
    const city = boxRegion('city', [9, 50.4, 9.2, 50.6]);
    const through: Line = [
      [
        [8.5, 50.5],
        [9.8, 50.5],
      ],
    ];
    expect(ids(chosen([county, city], { county: 250, city: 90 }, ...through))).toEqual(['county']);
    expect(
      ids(
        chosen([county, city], { county: 250, city: 90 }, [
          [9.05, 50.5],
          [9.15, 50.5],
        ]),
      ),
    ).toEqual(['city']);
    // round about the city and back into it: the land between is the county's, not water
    expect(
      ids(
        chosen([county, city], { county: 250, city: 90 }, [
          [9.1, 50.5],
          [9.1, 50.7],
          [9.15, 50.5],
        ]),
      ),
    ).toEqual(['county']);
  });

  it('hold an enclave cut out of the region around it', () => {
    const ring = boxRegion('ring', [8, 50, 10, 51]);
    const index = JSON.parse(indexText([ring, boxRegion('enclave', [8.8, 50.4, 9.2, 50.6])])) as {
      features: { geometry: { coordinates: number[][][][] } }[];
    };
    index.features[0]?.geometry.coordinates[0]?.push([
      [8.8, 50.4],
      [9.2, 50.4],
      [9.2, 50.6],
      [8.8, 50.6],
      [8.8, 50.4],
    ]);
    const read = readRegionIndex(JSON.stringify(index), () => undefined);
    if (!read.ok) throw new Error(read.error.message);
    const through = (...line: Line) =>
      ids(chooseRegions(drawThrough(read.value, lineThrough(...line)), { sizes: new Map() }));
    expect(
      through([
        [8.2, 50.5],
        [9.8, 50.5],
      ]),
    ).toEqual(['ring', 'enclave']);
    expect(
      through([
        [8.2, 50.2],
        [9.8, 50.2],
      ]),
    ).toEqual(['ring']);
  });

  it('along a border: one where the outlines overlap, both where they do not', () => {
    const zigzag = Array.from({ length: 21 }, (_, i): [number, number] => [
      9.97 + (i % 2) * 0.06,
      50 + i / 21,
    ]);
    const wide = [boxRegion('north', [8, 50, 10.1, 51]), boxRegion('middle', [9.9, 50, 12, 51])];
    expect(ids(chosen(wide, MB, zigzag))).toEqual(['north']);
    expect(ids(chosen([NORTH, MIDDLE], MB, zigzag))).toEqual(['north', 'middle']);
  });

  it('are found on either side of 180 degrees', () => {
    const west = boxRegion('farwest', [-180, -20, -175, -15]);
    const east = boxRegion('fareast', [175, -20, 180, -15]);
    const beyond = boxRegion('islands', [176, -19, 186, -16]);
    const over: Line = [
      [
        [179.5, -17],
        [-179.5, -17.2],
      ],
    ];
    expect(ids(chosen([west, east], { farwest: 5, fareast: 5 }, ...over))).toEqual(['fareast', 'farwest']);
    expect(ids(chosen([west, east, beyond], { farwest: 5, fareast: 5, islands: 8 }, ...over))).toEqual([
      'islands',
    ]);
    expect(left(chosen([west, east], {}, ...over))).toEqual([]);
  });

  it('say what lies in no region at all', () => {
    const choice = chosen([NORTH], MB, [
      [9.5, 50.5],
      [10.5, 50.5],
    ]);
    expect(ids(choice)).toEqual(['north']);
    expect(left(choice)).toEqual(['35 km, no region']);
    expect(
      chosen([NORTH], MB, [
        [20, 40],
        [21, 40],
      ]),
    ).toMatchObject({ regions: [], bytes: 0 });
  });

  it('hold each part of a drive with a break in it, and not what lies between', () => {
    expect(
      ids(
        chosen(
          THREE,
          MB,
          [
            [8.2, 50.5],
            [8.4, 50.5],
          ],
          [
            [13.2, 50.5],
            [13.4, 50.5],
          ],
        ),
      ),
    ).toEqual(['north', 'south']);
  });

  it('are chosen by guessed sizes while nobody was asked', () => {
    const choice = chosen(THREE, {}, [
      [9.5, 50.5],
      [10.5, 50.5],
    ]);
    expect(ids(choice)).toEqual(['north', 'middle']);
    expect(choice.guessed).toBe(true);
    // 2 × 1 degrees at 50.5°: 15,700 km² each
    expect(choice.bytes / 2 / 9000).toBeCloseTo(15_700, -3);
  });

  it('do without one whose file cannot be had; its land is not taken for water', () => {
    const through = drawn(THREE, [
      [8.5, 50.5],
      [13.5, 50.5],
    ]);
    const choice = chooseRegions(through, { sizes: new Map(), without: new Set(['middle']) });
    expect(ids(choice)).toEqual(['continent']);
    const none = chooseRegions(through, { sizes: new Map(), without: new Set(['middle', 'continent']) });
    expect(ids(none)).toEqual(['north', 'south']);
    expect(left(none)).toEqual(['142 km, no region']);
  });
});

describe('sizes are asked', () => {
  it('of every region that may be chosen, not of continents', () => {
    const continent = boxRegion('continent', [0, 30, 40, 70]);
    const parts = Array.from({ length: 40 }, (_, i) => boxRegion(`far${i}`, [i, 30, i + 1, 70]));
    const through = drawn(
      [continent, NORTH, MIDDLE, ...parts],
      [
        [9.5, 50.5],
        [10.5, 50.5],
      ],
    );
    const asked = regionsToAskAbout(through, { sizes: new Map() }).map(({ id }) => id);
    expect(asked).toEqual(['north', 'middle', 'far9', 'far10']);
    const ask = (sizes: readonly [string, number][], untold: readonly string[] = []) =>
      regionsToAskAbout(through, { sizes: new Map(sizes), untold: new Set(untold) }).map(({ id }) => id);
    expect(ask([['north', 1e8]])).toEqual(['middle', 'far9', 'far10']);
    expect(ask([['north', 1e8]], ['middle'])).toEqual([]);
  });
});

it('a drive of a thousand kilometres through a list of 555 regions of 400 corners each takes few looks', () => {
  const round = (id: string, lon: number, lat: number): Drawn => ({
    id,
    corners: Array.from({ length: 400 }, (_, i): [number, number] => [
      lon + 0.8 * Math.cos((i * Math.PI) / 200),
      lat + 0.8 * Math.sin((i * Math.PI) / 200),
    ]),
  });
  const regions = Array.from({ length: 555 }, (_, i) =>
    round(`r${i}`, -10 + (i % 37), 40 + Math.floor(i / 37)),
  );
  const path = Array.from({ length: 3000 }, (_, i): [number, number] => [-5 + i / 250, 45 + i / 600]);
  const choice = chooseRegions(drawn(regions, path), { sizes: new Map() });
  expect(km(choice.lengthM)).toBeGreaterThan(1000);
  expect(choice.leftOut).toEqual([]);
  expect(choice.regions.length).toBeLessThan(20);
});
