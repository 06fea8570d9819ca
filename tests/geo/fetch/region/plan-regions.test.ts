import { describe, expect, it } from 'vitest';
import { drawThrough } from '../../../../geo/fetch/region/drawn-through.ts';
import { planRegions } from '../../../../geo/fetch/region/plan-regions.ts';
import { readRegionIndex } from '../../../../geo/fetch/region/read-index.ts';
import {
  boxRegion,
  indexText,
  lineThrough,
  type Places,
} from '../../../support/map-server/invented-regions.ts';

const HOST = 'maps.example.org';
const REGIONS = [
  boxRegion('continent', [7, 49, 15, 52]),
  boxRegion('north', [8, 50, 10, 51], { parent: 'continent' }),
  boxRegion('south', [11, 50, 13, 51], { parent: 'continent' }),
];

function planned(places: Places, sizes: Readonly<Record<string, number>> = {}) {
  const index = readRegionIndex(indexText(REGIONS), () => undefined);
  if (!index.ok) throw new Error(index.error.message);
  return planRegions(HOST, drawThrough(index.value, lineThrough(places)), {
    sizes: new Map(Object.entries(sizes)),
  });
}

const ACROSS: Places = [
  [9, 50.5],
  [12, 50.5],
];

describe('what would be asked of an extract server', () => {
  it('is the list alone while there is none, and the list tells nothing of the drive', () => {
    expect(planRegions(HOST, undefined, { sizes: new Map() })).toEqual([
      {
        step: 'index',
        host: HOST,
        bytes: 4_000_000,
        say: 'First the list of regions is asked of maps.example.org: about 4.0 MB, kept for 30 days. It is the same for everybody and tells the server nothing of the drive.',
      },
    ]);
  });

  it('is then the sizes, and what they tell the server; the maps by guessed sizes after that', () => {
    const [sizes, maps, ...more] = planned(ACROSS);
    expect(sizes).toMatchObject({
      step: 'sizes',
      say: 'maps.example.org is asked how large 2 files would be: North and South. It learns these names, and so roughly where the drive goes; nothing else of the drive, the vehicle or the day.',
    });
    expect(maps).toMatchObject({ step: 'maps', choice: { guessed: true } });
    expect(maps?.say).toMatch(
      /^2 maps from maps\.example\.org, about \d+ MB in all: North \(about \d+ MB, /u,
    );
    expect(more).toEqual([]);
  });

  it('is then the maps with their sizes, and what of the drive no map would hold', () => {
    const plan = planned(ACROSS, { north: 320e6, south: 1.2e9 });
    expect(plan.map(({ step, say }) => [step, say])).toEqual([
      [
        'maps',
        '2 maps from maps.example.org, 1.5 GB in all: North (320 MB, 70.7 km (43.9 mi) of the drive) and South (1.2 GB, 70.7 km (43.9 mi) of the drive). 70.7 km (43.9 mi) from 70.7 km (43.9 mi) on lie in no region smaller than Continent (about 1.7 GB): water, or a strip between two regions. They are left out; what is a road there stays unknown.',
      ],
    ]);
  });

  it('is nothing where no region holds any of the drive', () => {
    expect(
      planned([
        [30, 10],
        [31, 10],
      ]),
    ).toEqual([
      {
        step: 'none',
        say: 'No region of maps.example.org holds any of this drive. Fetch the map along the drive instead, or name another server.',
      },
    ]);
  });
});
