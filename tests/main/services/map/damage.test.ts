import { isDeepStrictEqual } from 'node:util';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Result } from '../../../../geo/result.ts';
import type { Roads } from '../../../../geo/roads/roads.ts';
import { openMap } from '../../../../main/services/map/open-map.ts';
import { pbfFile } from '../../../support/pbf-file.ts';
import { scratchFiles, worked } from '../../../support/scratch-files.ts';

const write = scratchFiles();

const nodes = Array.from({ length: 40 }, (_, k) => ({
  id: 100 + k,
  lat: 50 + k / 100,
  lon: 7 - k / 100,
  ...(k % 5 === 0 ? { tags: { barrier: 'gate', name: `Ö ${k}` } } : {}),
}));
const ways = Array.from({ length: 20 }, (_, k) => ({
  id: 10 + k,
  refs: [100 + k, 101 + k, 110 + k],
  tags: { highway: 'residential', maxheight: `${k}.5` },
}));
const relations = [
  {
    id: 5,
    members: [
      { type: 'way', id: 10, role: 'from' },
      { type: 'node', id: 101, role: 'via' },
      { type: 'way', id: 11, role: 'to' },
    ],
    tags: { type: 'restriction', restriction: 'no_left_turn' },
  },
] as const;
const blocks = [{ nodes }, { ways }, { relations }];

const xml = `<?xml version="1.0"?>
<osm version="0.6">
${nodes.map(({ id, lat, lon }) => `<node id="${id}" lat="${lat}" lon="${lon}"><tag k="name" v="N&#246; ${id}"/></node>`).join('\n')}
${ways.map(({ id, refs }) => `<way id='${id}'>${refs.map((ref) => `<nd ref="${ref}"/>`).join('')}<tag k="highway" v="track"/></way>`).join('\n')}
</osm>
`;
const json = JSON.stringify({
  version: 0.6,
  elements: [
    ...nodes.map((node) => ({ type: 'node', ...node })),
    ...ways.map(({ refs, ...way }) => ({ type: 'way', ...way, nodes: refs })),
  ],
});

/** Whole files of each sort, and how many roads they hold. */
const files = [
  { what: 'PBF, zlib', bytes: pbfFile(blocks) },
  { what: 'PBF, raw', bytes: pbfFile(blocks, { compression: 'raw' }) },
  { what: 'PBF, plain nodes', bytes: pbfFile(blocks, { compression: 'raw', dense: false }) },
  { what: 'XML', bytes: Buffer.from(xml) },
  { what: 'XML, gzipped', bytes: gzipSync(xml) },
  { what: 'JSON', bytes: Buffer.from(json) },
] as const;

/** Opens bytes with a limit of time and says what came. */
async function open(bytes: Uint8Array): Promise<Result<Roads>> {
  return openMap([write('damaged', bytes)], undefined);
}

/** Either a clear sentence or a map that holds together. */
function expectSentenceOrMap(result: Result<Roads>): void {
  if (!result.ok) {
    expect(result.error.message).toMatch(/^\S.{20,}[.)]$/su);
    expect(result.error.message).not.toMatch(/undefined(?! entity)|NaN|\[object/u);
    return;
  }
  const { nodes: kept, ways: found } = result.value;
  for (const ref of found.refs) expect(ref).toBeLessThan(kept.count);
  for (const lat of kept.lat) expect(Math.abs(lat)).toBeLessThanOrEqual(90);
  for (const lon of kept.lon) expect(Math.abs(lon)).toBeLessThanOrEqual(180);
  for (const id of kept.id) expect(Number.isSafeInteger(id)).toBe(true);
}

describe.each(files)('a damaged file ($what)', ({ what, bytes }) => {
  it('is whole to begin with', async () => {
    expect(worked(await open(bytes)).ways.count).toBe(20);
  });

  it('cut anywhere is refused, or told by what is lacking', async () => {
    for (let end = 0; end < bytes.length; end += bytes.length > 2000 ? 97 : 17) {
      const result = await open(bytes.subarray(0, end));
      expectSentenceOrMap(result);
      // a cut between two blocks of a PBF leaves a sound file: nothing in the format tells; JSON and XML end with a mark
      if (result.ok && !what.startsWith('PBF')) expect(worked(result).ways.count).toBe(20);
    }
  });

  it('with a flipped bit is refused or still holds together', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length * 8 - 1), async (bit) => {
        const flipped = Uint8Array.from(bytes);
        flipped[bit >> 3] = flipped[bit >> 3]! ^ (1 << (bit & 7));
        expectSentenceOrMap(await open(flipped));
      }),
      { numRuns: 60 },
    );
  });

  it('with random bytes in its middle is refused or still holds together', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat(bytes.length - 1),
        fc.uint8Array({ minLength: 1, maxLength: 60 }),
        async (at, noise) => {
          const spoilt = Uint8Array.from(bytes);
          spoilt.set(noise.subarray(0, bytes.length - at), at);
          expectSentenceOrMap(await open(spoilt));
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe('a compressed block', () => {
  it('with a flipped bit in its content is always refused', async () => {
    const bytes = files[0].bytes;
    const whole = worked(await open(bytes));
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 60 * 8, max: bytes.length * 8 - 1 }), async (bit) => {
        const flipped = Uint8Array.from(bytes);
        flipped[bit >> 3] = flipped[bit >> 3]! ^ (1 << (bit & 7));
        const result = await open(flipped);
        // what the flip left alone (a block's spare fields) may read as before, nothing else
        if (result.ok) expect(isDeepStrictEqual(result.value.ways, whole.ways)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe('random bytes', () => {
  for (const [what, lead] of [
    ['alone', []],
    ['after a PBF header', [...pbfFile([])]],
    ['after the start of XML', [...Buffer.from('<osm>')]],
    ['after the start of JSON', [...Buffer.from('{"elements":[')]],
    ['after the start of gzip', [0x1f, 0x8b, 8, 0]],
  ] as const)
    it(`${what} are refused`, async () => {
      await fc.assert(
        fc.asyncProperty(fc.uint8Array({ minLength: 1, maxLength: 400 }), async (noise) => {
          const result = await open(Uint8Array.from([...lead, ...noise]));
          expect(result.ok).toBe(false);
          expectSentenceOrMap(result);
        }),
        { numRuns: 50 },
      );
    });
});
