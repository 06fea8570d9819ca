import { crc32 } from 'node:zlib';
import { wayKind } from '../../../geo/roads/keep.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { encodeDirectory } from '../../../geo/shelf/directory.ts';
import { encodeBlock } from '../../../geo/shelf/encode-block.ts';
import { EDGE, LAYER, LAYER_ZOOM } from '../../../geo/shelf/layers.ts';
import { encodeNameKeys, encodeNames, NAME_KINDS } from '../../../geo/shelf/names.ts';
import { encodeTrailer, PART_MAGIC, TRAILER_BYTES } from '../../../geo/shelf/part-file.ts';
import type { PartMeta } from '../../../geo/shelf/part-meta.ts';
import { encodeTags } from '../../../geo/shelf/tag-bytes.ts';
import { tileNumber } from '../../../geo/shelf/tiles.ts';
import { CHOICE_VERSION } from '../../../geo/shelf/versions.ts';
import { tileAt } from '../../support/shelf/tile-at.ts';
import { hostileText } from './hostile.ts';
import { smallMap } from './osm.ts';
import type { Random } from './random.ts';

/** A few streets near 50° N 7° E as the bytes of a block. */
export function blockBytes(random: Random): Uint8Array {
  const map = smallMap(random);
  const sets: Uint8Array[] = [];
  const setOf = (tags: Tags) => sets.push(encodeTags(tags)) - 1;
  const nodes = byId(map.nodes);
  const ways = byId(map.ways);
  const place = new Map(nodes.map(({ id }, i) => [id, i]));
  const refs = ways.map((way) => way.refs.flatMap((ref) => place.get(ref) ?? []));
  const start = [0];
  for (const each of refs) start.push((start.at(-1) ?? 0) + each.length);
  const tagged = [...nodes.keys()].filter((i) => nodes[i]?.tags !== undefined);
  return encodeBlock({
    sets,
    nodes: {
      count: nodes.length,
      id: Float64Array.from(nodes, ({ id }) => id),
      lat: Float64Array.from(nodes, ({ lat }) => (random.chance(0.05) ? Number.NaN : lat)),
      lon: Float64Array.from(nodes, ({ lon }) => lon),
      tagged: {
        node: Uint32Array.from(tagged),
        set: Uint32Array.from(tagged, (i) => setOf(nodes[i]?.tags ?? {})),
      },
    },
    ways: {
      count: ways.length,
      id: Float64Array.from(ways, ({ id }) => id),
      kind: Uint8Array.from(ways, ({ tags }) => wayKind(tags ?? {}) ?? EDGE),
      set: Uint32Array.from(ways, ({ tags }) => setOf(tags ?? {})),
      start: Uint32Array.from(start),
      refs: Uint32Array.from(refs.flat()),
    },
    relations: byId(map.relations).map(({ id, members, tags }) => ({ id, members, set: setOf(tags ?? {}) })),
  });
}

function byId<T extends { readonly id: number }>(elements: readonly T[]): T[] {
  return [...new Map(elements.map((each) => [each.id, each])).values()].sort((a, b) => a.id - b.id);
}

/** A block of the name index. */
export function nameBytes(random: Random): Uint8Array {
  const entries = Array.from({ length: random.below(8) }, () => ({
    name: hostileText(random),
    kind: random.pick(NAME_KINDS),
    what: random.pick(['town', 'residential', '']),
    lat: 50,
    lon: 7,
  }));
  return random.chance(0.5) ? encodeNames(entries) : encodeNameKeys(entries.map(({ name }) => name));
}

/** Where the blocks of a part are told to lie. */
export function directoryBytes(random: Random): Uint8Array {
  const count = random.below(20);
  const numbers = (below: number) => Array.from({ length: count }, () => random.below(below));
  return encodeDirectory({
    count,
    layer: Uint8Array.from(numbers(8)),
    tile: Float64Array.from(numbers(2 ** 26)),
    offset: Float64Array.from(numbers(2 ** 31)),
    length: Uint32Array.from(numbers(2 ** 20)),
    crc: Uint32Array.from(numbers(2 ** 31)),
  });
}

/** What a part's meta says that was made by hand. */
export const META: PartMeta = {
  source: { name: 'map', sha256: '', bytes: 1 },
  notes: [],
  incomplete: [],
  roads: 1,
  mainRoads: 0,
  minorRoads: 1,
  nodes: 2,
  box: null,
};

/** A whole part file of these blocks, all checksums right: one for each layer that a check reads. */
export function partBytes(blocks: readonly Uint8Array[], meta: unknown): Uint8Array {
  const layers = (['wide', 'near', 'far'] as const).slice(0, blocks.length);
  const tiles = layers.map((layer) => {
    const { x, y } = tileAt(50.0005, 7.0005, LAYER_ZOOM[layer]);
    return tileNumber(x, y, LAYER_ZOOM[layer]);
  });
  const offset = blocks.map((_, i) =>
    blocks.slice(0, i).reduce((sum, { length }) => sum + length, PART_MAGIC.length),
  );
  const directory = encodeDirectory({
    count: layers.length,
    layer: Uint8Array.from(layers, (layer) => LAYER[layer]),
    tile: Float64Array.from(tiles),
    offset: Float64Array.from(offset),
    length: Uint32Array.from(blocks, ({ length }) => length),
    crc: Uint32Array.from(blocks, (block) => crc32(block)),
  });
  const metaBytes = new TextEncoder().encode(JSON.stringify(meta));
  const directoryAt = PART_MAGIC.length + blocks.reduce((sum, { length }) => sum + length, 0);
  const metaAt = directoryAt + directory.length;
  const trailer = encodeTrailer(
    {
      choiceVersion: CHOICE_VERSION,
      directory: { offset: directoryAt, length: directory.length, crc: crc32(directory) },
      meta: { offset: metaAt, length: metaBytes.length, crc: crc32(metaBytes) },
      fileBytes: metaAt + metaBytes.length + TRAILER_BYTES,
    },
    (bytes) => crc32(bytes),
  );
  return Uint8Array.from(Buffer.concat([PART_MAGIC, ...blocks, directory, metaBytes, trailer]));
}
