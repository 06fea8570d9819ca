import { describe, expect, it } from 'vitest';
import { unpackBlob } from '../../../../geo/roads/pbf/blob.ts';
import type { Roads } from '../../../../geo/roads/roads.ts';
import { openMap } from '../../../../main/services/map/open-map.ts';
import {
  bytesOf,
  field,
  number,
  type PbfBlock,
  type PbfOptions,
  pbfFile,
} from '../../../support/pbf-file.ts';
import { scratchFiles, worked } from '../../../support/scratch-files.ts';

const write = scratchFiles();
let files = 0;

function open(blocks: readonly PbfBlock[], options?: PbfOptions) {
  return openMap([write(`map-${files++}.osm.pbf`, pbfFile(blocks, options))], undefined);
}

/** Each way as its id, the ids of its nodes and its tags. */
function waysOf(roads: Roads) {
  return Array.from(roads.ways.id, (id, way) => ({
    id,
    refs: Array.from(
      roads.ways.refs.subarray(roads.ways.start[way], roads.ways.start[way + 1]),
      (node) => roads.nodes.id[node],
    ),
    tags: roads.ways.tags[way],
  }));
}

const nodes = [
  { id: 1, lat: 50.1234567, lon: 7.7654321 },
  { id: 2, lat: 50.1, lon: 7.8, tags: { barrier: 'bollard', maxwidth: '2.3' } },
  { id: 3, lat: -0.0000001, lon: -179.9999999 },
];
const lane = { id: 10, refs: [1, 2, 3], tags: { highway: 'residential', name: 'Straße der Öde 🚐' } };

describe('a PBF map', () => {
  for (const dense of [true, false])
    for (const compression of ['zlib', 'raw'] as const)
      it(`with ${dense ? 'dense' : 'plain'} nodes in ${compression} blocks gives its road with every place and tag`, async () => {
        const roads = worked(await open([{ nodes }, { ways: [lane] }], { dense, compression }));
        expect(waysOf(roads)).toEqual([lane]);
        expect([...roads.nodes.id]).toEqual([1, 2, 3]);
        expect([...roads.nodes.lat]).toEqual(nodes.map((node) => node.lat));
        expect([...roads.nodes.lon]).toEqual(nodes.map((node) => node.lon));
        expect([...roads.nodes.tags]).toEqual([[1, nodes[1]?.tags]]);
        expect(roads.notes).toEqual([]);
      });

  it('keeps ids up to 2^53 and below zero', async () => {
    const far = 2 ** 52 - 7;
    const roads = worked(
      await open([
        {
          nodes: [
            { id: -5, lat: 1, lon: 1 },
            { id: far, lat: 2, lon: 2 },
          ],
        },
        { ways: [{ id: -12_345_678_901, refs: [far, -5], tags: { highway: 'track' } }] },
      ]),
    );
    expect(waysOf(roads)).toEqual([{ id: -12_345_678_901, refs: [far, -5], tags: { highway: 'track' } }]);
  });

  it('may count in other units than a hundred nanodegrees', async () => {
    const roads = worked(
      await open([{ nodes: nodes.slice(0, 2) }, { ways: [{ ...lane, refs: [1, 2] }] }], { granularity: 1 }),
    );
    expect(roads.nodes.lat[0]).toBe(50.1234567);
  });

  it('leaves out what is marked deleted', async () => {
    for (const dense of [true, false]) {
      const roads = worked(
        await open(
          [
            {
              nodes: [
                { id: 1, lat: 1, lon: 1 },
                { id: 9, lat: 5, lon: 5, visible: false },
                { id: 2, lat: 2, lon: 2, tags: { highway: 'crossing' } },
              ],
            },
            {
              ways: [
                { id: 10, refs: [1, 2], tags: { highway: 'service' }, visible: true },
                { id: 11, refs: [2, 1], tags: { highway: 'service' }, visible: false },
              ],
            },
            {
              relations: [
                {
                  id: 1,
                  members: [{ type: 'way', id: 10, role: 'from' }],
                  tags: { type: 'restriction' },
                  visible: false,
                },
              ],
            },
          ],
          { dense },
        ),
      );
      expect(waysOf(roads).map((way) => way.id)).toEqual([10]);
      expect([...roads.nodes.tags.values()]).toEqual([{ highway: 'crossing' }]);
      expect(roads.restrictions).toEqual([]);
    }
  });

  it('may carry places with its ways and no nodes', async () => {
    const roads = worked(
      await open(
        [
          {
            ways: [
              {
                ...lane,
                refs: [1, 2],
                places: [
                  [50.5, 7.5],
                  [50.6, 7.6],
                ],
              },
            ],
          },
        ],
        {
          features: ['OsmSchema-V0.6', 'DenseNodes', 'LocationsOnWays'],
        },
      ),
    );
    expect([...roads.nodes.lat]).toEqual([50.5, 50.6]);
    expect(waysOf(roads)[0]?.refs).toEqual([1, 2]);
  });

  it('tells the date of its data and its SHA-256', async () => {
    const roads = worked(await open([{ nodes }], { replicationTime: 1_750_000_000 }));
    expect(roads.sources[0]?.dataDate).toBe('2025-06-15T15:06:40Z');
    expect(roads.sources[0]?.sha256).toMatch(/^[0-9a-f]{64}$/u);
  });

  it('gives turn restrictions whose roads are kept, with via node or via way', async () => {
    const members = [
      { type: 'way', id: 10, role: 'from' },
      { type: 'node', id: 2, role: 'via' },
      { type: 'way', id: 12, role: 'via' },
      { type: 'way', id: 11, role: 'to' },
    ] as const;
    const tags = { type: 'restriction', restriction: 'no_left_turn' };
    const roads = worked(
      await open([
        { nodes },
        { ways: [lane] },
        {
          relations: [
            { id: 5, members, tags },
            { id: 6, members: [{ type: 'way', id: 99, role: 'from' }], tags },
          ],
        },
      ]),
    );
    expect(roads.restrictions).toEqual([{ id: 5, from: [10], to: [11], viaNodes: [2], viaWays: [12], tags }]);
  });

  it("gives an area's untagged edge the area's tags", async () => {
    const roads = worked(
      await open([
        { nodes },
        {
          ways: [
            { id: 20, refs: [1, 2, 3, 1] },
            { id: 21, refs: [1, 2] },
          ],
        },
        {
          relations: [
            {
              id: 5,
              members: [
                { type: 'way', id: 20, role: 'outer' },
                { type: 'way', id: 21, role: 'inner' },
              ],
              tags: { type: 'multipolygon', natural: 'wood' },
            },
          ],
        },
      ]),
    );
    expect(waysOf(roads)).toEqual([
      { id: 20, refs: [1, 2, 3, 1], tags: { type: 'multipolygon', natural: 'wood' } },
    ]);
    expect([...roads.ways.kind]).toEqual([2]);
  });
});

describe('a PBF map without ways', () => {
  it('may have been cut between two blocks, and that is said', async () => {
    const whole = worked(await open([{ nodes }, { ways: [lane] }]));
    expect(whole.incomplete).toEqual([]);
    const cut = worked(await open([{ nodes }]));
    expect(cut.incomplete?.join()).toMatch(/not one way/u);
    expect(cut.notes.join()).toMatch(/not one way/u);
  });
});

describe('a PBF map that cannot be used', () => {
  for (const compression of ['lz4', 'zstd', 'lzma', 'bzip2'] as const)
    it(`compressed with ${compression} is refused by that name, with what to do`, async () => {
      const result = await open([{ nodes }], { compression });
      expect(result).toMatchObject({ ok: false, error: { code: 'map.compression' } });
      if (!result.ok) expect(result.error.message).toMatch(new RegExp(`${compression}.*osmium cat`, 'u'));
    });

  it('needing an unknown feature is refused with its name', async () => {
    const result = await open([{ nodes }], { features: ['OsmSchema-V0.6', 'Wormholes'] });
    expect(result).toMatchObject({ ok: false, error: { code: 'map.feature' } });
    if (!result.ok) expect(result.error.message).toContain('"Wormholes"');
  });

  it('being a history file is refused', async () => {
    const result = await open([{ nodes }], { features: ['OsmSchema-V0.6', 'HistoricalInformation'] });
    expect(result).toMatchObject({ ok: false, error: { code: 'map.history' } });
  });

  it('holding places off the Earth is refused as damaged', async () => {
    for (const dense of [true, false]) {
      const result = await open([{ nodes: [{ id: 1, lat: 91, lon: 0 }] }], { dense });
      expect(result).toMatchObject({ ok: false, error: { code: 'map.damaged' } });
    }
  });

  it('with a block of no known kind is refused, as a damaged name would lose its roads', async () => {
    const bytes = Buffer.from(pbfFile([{ nodes }, { ways: [lane] }]));
    bytes[bytes.lastIndexOf('OSMData') + 3] = 0x45;
    const result = await openMap([write('kind.osm.pbf', bytes)], undefined);
    expect(result).toMatchObject({ ok: false, error: { code: 'map.damaged' } });
  });

  it('with a block of another size than it says, or two contents, is refused', async () => {
    const content = new Uint8Array(10);
    const unpack = { inflate: () => content, text: () => '' };
    const raw = (size: number) => bytesOf([field(1, content), number(2, size)]);
    expect([...unpackBlob(raw(10), unpack)]).toEqual([...content]);
    expect(() => unpackBlob(raw(9), unpack)).toThrow(/another size/u);
    expect(() => unpackBlob(bytesOf([raw(10), field(3, content)]), unpack)).toThrow(/twice/u);
  });

  it("claiming a block over the format's 32 MB is refused before any memory is taken", async () => {
    const bytes = pbfFile([{ nodes }]);
    const path = write(
      'huge.osm.pbf',
      Buffer.concat([
        bytes,
        Buffer.from([0, 0, 0, 14, 0x0a, 7, ...Buffer.from('OSMData'), 0x18, 0xff, 0xff, 0xff, 0x7f]),
      ]),
    );
    const result = await openMap([path], undefined);
    expect(result).toMatchObject({ ok: false, error: { code: 'map.damaged' } });
  });
});
