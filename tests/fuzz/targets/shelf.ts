import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { Refusal } from '../../../geo/roads/refusal.ts';
import { decodeBlock } from '../../../geo/shelf/decode-block.ts';
import { decodeDirectory } from '../../../geo/shelf/directory.ts';
import { decodeNameKeys, decodeNames } from '../../../geo/shelf/names.ts';
import { createReplay } from '../../../geo/shelf/replay.ts';
import { listMap } from '../../../main/services/shelf/list-maps.ts';
import { roadsOnShelf } from '../../../main/services/shelf/roads-on-shelf.ts';
import { findMaps, mapFolder } from '../../../main/services/shelf/shelf-folder.ts';
import { verifyMap } from '../../../main/services/shelf/verify-map.ts';
import { trackOf } from '../../support/random-drives.ts';
import { mutateBytes } from '../make/mutate-bytes.ts';
import { mutateJson } from '../make/mutate-json.ts';
import type { Random } from '../make/random.ts';
import { blockBytes, directoryBytes, META, nameBytes, partBytes } from '../make/shelf.ts';
import { askedTwice, faultInSentence } from '../promises.ts';
import type { Target } from '../target.ts';
import { dataOf, faultInRoads } from './maps.ts';

const DECODERS: readonly {
  make(random: Random): Uint8Array;
  decode(bytes: Uint8Array): unknown;
}[] = [
  { make: blockBytes, decode: replayed },
  { make: nameBytes, decode: decodeNames },
  { make: nameBytes, decode: decodeNameKeys },
  { make: directoryBytes, decode: decodeDirectory },
];

/** The first byte says what is decoded. */
export const shelfBytes: Target = {
  name: 'shelf bytes',
  weight: 6,
  make(random) {
    const which = random.below(DECODERS.length);
    const made = DECODERS[which]!.make(random);
    return Uint8Array.from([which, ...(random.chance(0.9) ? mutateBytes(made, random) : noise(random))]);
  },
  check(input) {
    const { decode } = DECODERS[input[0]!]!;
    return askedTwice(() => refusedOr(() => decode(input.subarray(1))));
  },
};

function noise(random: Random): Uint8Array {
  return Uint8Array.from({ length: random.below(200) }, () => random.below(256));
}

function refusedOr<T>(decode: () => T): Result<T> {
  try {
    return ok(decode());
  } catch (thrown) {
    if (thrown instanceof Refusal) return fail(thrown.problem.code, thrown.problem.message);
    throw thrown;
  }
}

/** A block that is not refused is told to the end. */
function replayed(bytes: Uint8Array): unknown {
  const told: unknown[] = [];
  createReplay([decodeBlock(bytes)])({
    nodes(batch) {
      for (let i = 0; i < batch.count; i++)
        told.push([batch.id[i], batch.lat[i], batch.lon[i], batch.tags(i)]);
    },
    way: ({ id, refs, count, tags, hasKey }) =>
      told.push([id, [...refs.subarray(0, count)], tags(), hasKey((key) => key === 'highway')]),
    relation: ({ id, tags, members }) => told.push([id, tags, members()]),
  });
  return told;
}

const shelf = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-'));
const folder = mapFolder(shelf, 'Vale');
const route = trackOf({ lat: [50, 50.001, 50.002], lon: [7, 7.001, 7.002] });
const PART = 'part-1-1.shelf';
const MANIFEST = {
  format: 'lanegauge.shelf',
  version: 1,
  name: 'Vale',
  generation: 1,
  imported: '2027-06-12T09:30:00Z',
  origin: { by: 'file' },
  parts: [{ file: PART, bytes: 1, roads: 1, source: META.source }],
};
const encoder = new TextEncoder();

/** Damaged anywhere; or inside, with all checksums right, as a foreign program may have written it. */
export const shelfParts: Target = {
  name: 'shelf parts',
  weight: 4,
  make(random) {
    const blocks = [blockBytes(random), blockBytes(random), blockBytes(random)];
    if (random.chance(0.3)) return mutateBytes(partBytes(blocks, META), random);
    const at = random.below(4);
    const changed = blocks.map((block, i) => (i === at ? mutateBytes(block, random) : block));
    return partBytes(changed, at === 3 ? mutateJson(META, random) : META);
  },
  check: (input) => served(input, withSum(MANIFEST)),
};

export const shelfManifests: Target = {
  name: 'shelf manifests',
  weight: 2,
  make: (random) =>
    random.chance(0.3)
      ? mutateBytes(withSum(MANIFEST), random)
      : withSum(random.chance(0.9) ? mutateJson(MANIFEST, random) : random.below(9)),
  check: (input) => served(partBytes([], META), input),
};

function withSum(manifest: unknown): Uint8Array {
  const body = `${JSON.stringify(manifest)}\n`;
  return encoder.encode(`${crc32(body).toString(16).padStart(8, '0')}\n${body}`);
}

/** The map is listed, read through and used for a check; each may find it damaged. */
async function served(part: Uint8Array, manifest: Uint8Array): Promise<string | undefined> {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, PART), part);
  writeFileSync(join(folder, 'map-1.json'), manifest);
  for (const map of await findMaps(shelf)) {
    const { name } = await listMap(map);
    const { damagedBlocks } = await verifyMap(map, { pause: async () => {} });
    if (typeof name !== 'string' || !(damagedBlocks >= 0)) return 'a map that cannot be told';
  }
  return askedTwice(
    async () => {
      const read = await roadsOnShelf(shelf, route);
      return read.ok ? ok(dataOf(read.value)) : read;
    },
    (roads) =>
      faultInRoads(roads) ?? roads.sources.map(({ name }) => faultInSentence(`${name}.`)).find(Boolean),
  );
}
