import { existsSync, readdirSync, readFileSync, truncateSync } from 'node:fs';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Result } from '../../../../../geo/result.ts';
import { LAYER } from '../../../../../geo/shelf/layers.ts';
import { compareNames, decodeNameKeys, decodeNames, foldName } from '../../../../../geo/shelf/names.ts';
import type { PartMeta } from '../../../../../geo/shelf/part-meta.ts';
import { type ImportHooks, importPart } from '../../../../../main/services/shelf/import/import-part.ts';
import { runInThreads } from '../../../../../main/services/shelf/import/run-in-threads.ts';
import { type Runner, runHere } from '../../../../../main/services/shelf/import/runner.ts';
import { openPart } from '../../../../../main/services/shelf/read-part.ts';
import { type PbfBlock, type PbfOptions, pbfFile } from '../../../../support/pbf-file.ts';
import { scratchFiles, worked } from '../../../../support/scratch-files.ts';
import { plainTiles } from '../../../../support/shelf/read-blocks.ts';

const SAMPLE = join(import.meta.dirname, '../../../../../sample-routes/district.osm.pbf');
const write = scratchFiles();
const out = write('map.part', '');
const temp = join(dirname(out), 'temp');

function take(
  path: string,
  hooks: ImportHooks = {},
  start: (signal: AbortSignal) => Runner = runHere,
): Promise<Result<PartMeta>> {
  return importPart({ path, name: 'map' }, out, temp, hooks, start);
}

function blocksOf(path: string): Map<string, string> {
  const part = openPart(path);
  const { count, layer, tile } = part.directory;
  const blocks = new Map<string, string>();
  for (let i = 0; i < count; i++)
    blocks.set(`${layer[i]}/${tile[i]}`, Buffer.from(part.block(i)).toString('base64'));
  part.close();
  return blocks;
}

const corner = [
  { id: 1, lat: 50, lon: 7 },
  { id: 2, lat: 50.001, lon: 7 },
];
const lane = { id: 10, refs: [1, 2], tags: { highway: 'residential', name: 'Am Bach' } };

async function tilesOf(blocks: readonly PbfBlock[], options?: PbfOptions) {
  worked(await take(write('small.osm.pbf', pbfFile(blocks, options))));
  const part = openPart(out);
  const tiles = [...plainTiles(part)];
  part.close();
  return tiles;
}

describe('an import', () => {
  it('gives the same blocks with two threads and with none of its own', async () => {
    worked(await take(SAMPLE));
    const here = blocksOf(out);
    worked(await take(SAMPLE, {}, (signal) => runInThreads(signal, 2)));
    expect(blocksOf(out)).toEqual(here);
  });

  it('says of itself what its source is and how many roads it holds', async () => {
    const shares: number[] = [];
    const meta = worked(await take(SAMPLE, { onProgress: ({ share }) => shares.push(share) }));
    expect(meta).toMatchObject({
      source: { name: 'map', bytes: readFileSync(SAMPLE).length },
      notes: [],
      incomplete: [],
    });
    expect(meta.mainRoads + meta.minorRoads).toBeLessThanOrEqual(meta.roads);
    expect(meta.box!.south).toBeLessThan(meta.box!.north);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    expect(existsSync(temp)).toBe(false);
  });

  it('keeps a wood beside a road and leaves out one that no road comes near', async () => {
    const wood = (id: number, lat: number) => ({
      nodes: [0, 1, 2].map((i) => ({ id: id * 10 + i, lat: lat + i * 1e-3, lon: 7 + (i % 2) * 1e-3 })),
      way: { id, refs: [0, 1, 2, 0].map((i) => id * 10 + i), tags: { natural: 'wood' } },
    });
    const beside = wood(20, 50.005);
    const far = wood(30, 50.1);
    const tiles = await tilesOf([
      { nodes: [...corner, ...beside.nodes, ...far.nodes] },
      { ways: [lane, beside.way, far.way] },
    ]);
    const near = tiles.filter(([key]) => key.startsWith(`${LAYER.near}/`));
    expect(new Set(near.flatMap(([, tile]) => [...tile.ways.keys()]))).toEqual(new Set([20]));
  });

  it('keeps places finer than a ten-millionth of a degree to the last bit', async () => {
    const fine = corner.map((node) => ({ ...node, lat: node.lat + 0.00000003, lon: 7.123456789 }));
    const tiles = await tilesOf([{ nodes: fine }, { ways: [lane] }], { granularity: 1 });
    const { nodes } = tiles[0]![1];
    expect(nodes.get(1)).toMatchObject({ lat: 50.00000003, lon: 7.123456789 });
  });

  it('lists names in order: places, sites, a road once', async () => {
    const pieces = [10, 11, 12].map((id) => ({ ...lane, id }));
    worked(
      await take(
        write(
          'names.osm.pbf',
          pbfFile([
            {
              nodes: [
                ...corner,
                { id: 3, lat: 50, lon: 7, tags: { place: 'village', name: 'Żabno' } },
                { id: 4, lat: 50, lon: 7, tags: { amenity: 'fuel', name: 'Ölmühle' } },
              ],
            },
            { ways: pieces },
          ]),
        ),
      ),
    );
    const part = openPart(out);
    const at = (layer: number) => [...part.directory.layer].flatMap((one, i) => (one === layer ? [i] : []));
    const names = at(LAYER.names).flatMap((place) => decodeNames(part.block(place)));
    expect(names.map(({ name, kind, what }) => [name, kind, what])).toEqual([
      ['Am Bach', 'road', 'residential'],
      ['Ölmühle', 'site', 'fuel'],
      ['Żabno', 'place', 'village'],
    ]);
    expect(decodeNameKeys(part.block(at(LAYER.nameKeys)[0]!))).toEqual(['am bach', 'olmuhle', 'zabno']);
    part.close();
  });
});

describe('the name index of an import', () => {
  it('is in order of the folded names, whatever letters they begin with', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.string({ unit: fc.constantFrom(...'aAbzZ19 -éÉßøЖжα京') }), { minLength: 1 }),
        async (said) => {
          const nodes = said.map((name, i) => ({
            id: i + 1,
            lat: 50,
            lon: 7,
            tags: { place: 'village', name },
          }));
          worked(await take(write('names.osm.pbf', pbfFile([{ nodes }]))));
          const part = openPart(out);
          const names = [...part.directory.layer].flatMap((layer, i) =>
            layer === LAYER.names ? decodeNames(part.block(i)) : [],
          );
          part.close();
          expect(names).toEqual(names.toSorted(compareNames));
          expect(names.map(({ name }) => name).sort()).toEqual(
            said.filter((name) => foldName(name) !== '').sort(),
          );
        },
      ),
      { numRuns: 15 },
    );
  });
});

describe('an import refuses, in a sentence, and leaves nothing behind:', () => {
  const bytes = readFileSync(SAMPLE);
  const version = { id: 1, lat: 50, lon: 7 };
  const cases: readonly (readonly [what: string, content: Uint8Array | string, says: RegExp])[] = [
    ['an empty file', '', /is empty/],
    ['a web page saved as a map', '<!doctype html><html><body>Log in</body></html>', /web page/],
    ['a file cut within a block', bytes.subarray(0, bytes.length - 1000), /cut short/],
    ['a file cut within a header', bytes.subarray(0, 200), /cut short/],
    [
      'a history file',
      pbfFile([{ nodes: [version] }], { features: ['HistoricalInformation'] }),
      /history file/,
    ],
    [
      'a file with two versions of a node',
      pbfFile([{ nodes: [version, { ...version, lat: 50.1 }] }, { ways: [lane] }]),
      /node 1 in several versions/,
    ],
    [
      'a file with two versions of a way',
      pbfFile([{ nodes: corner }, { ways: [lane, { ...lane, tags: { highway: 'service' } }] }]),
      /way 10 in several versions/,
    ],
    ['blocks packed in a way that is not read', pbfFile([{ nodes: corner }], { compression: 'lz4' }), /lz4/],
    ['a damaged block', flipped(bytes), /damaged/],
  ];
  it.each(cases)('%s', async (_, content, says) => {
    const result = await take(write('bad.osm.pbf', content));
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.error.message).toMatch(says);
    expect(existsSync(out)).toBe(false);
    expect(existsSync(temp)).toBe(false);
  });

  it('a file that becomes shorter while it is read', async () => {
    const path = write('shrinks.osm.pbf', bytes);
    let told = 0;
    const result = await take(path, {
      onProgress() {
        if (told++ === 1) truncateSync(path, 20_000);
      },
    });
    expect(result).toMatchObject({ ok: false, error: { code: 'map.changed' } });
  });

  it('one that was given up, at any moment', async () => {
    for (const after of [0, 1, 3, 6, 12]) {
      const giveUp = new AbortController();
      let told = 0;
      const result = await take(SAMPLE, {
        signal: giveUp.signal,
        onProgress() {
          if (told++ === after) giveUp.abort();
        },
      });
      expect(result).toMatchObject({ ok: false, error: { code: 'cancelled' } });
      expect(readdirSync(dirname(temp)).filter((name) => name === 'temp' || name === 'map.part')).toEqual([]);
    }
  });

  it('in threads too', async () => {
    const giveUp = new AbortController();
    const result = await take(
      SAMPLE,
      { signal: giveUp.signal, onProgress: ({ share }) => share > 0.3 && giveUp.abort() },
      runInThreads,
    );
    expect(result).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    expect(existsSync(temp)).toBe(false);
  });
});

function flipped(bytes: Uint8Array): Uint8Array {
  const hurt = Uint8Array.from(bytes);
  for (let at = 5000; at < hurt.length; at += 3000) hurt[at]! ^= 0x55;
  return hurt;
}
