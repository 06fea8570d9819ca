import { open, stat, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { crc32 } from 'node:zlib';
import { BoxMaker } from '../../../geo/roads/box.ts';
import {
  isArea,
  isNearOnly,
  isRestriction,
  isStandingNode,
  isZone,
  saysNothing,
  wayKind,
} from '../../../geo/roads/keep.ts';
import { type Tags, WAY_KIND } from '../../../geo/roads/roads.ts';
import type { Member } from '../../../geo/roads/sink.ts';
import type { BlockContent } from '../../../geo/shelf/block.ts';
import { encodeDirectory } from '../../../geo/shelf/directory.ts';
import { encodeBlock } from '../../../geo/shelf/encode-block.ts';
import { EDGE, LAYER, LAYER_ZOOM } from '../../../geo/shelf/layers.ts';
import { encodeTrailer, PART_MAGIC, TRAILER_BYTES } from '../../../geo/shelf/part-file.ts';
import type { PartMeta } from '../../../geo/shelf/part-meta.ts';
import { encodeTags } from '../../../geo/shelf/tag-bytes.ts';
import { countIn, numbersIn, rangeOfBox } from '../../../geo/shelf/tiles.ts';
import { CHOICE_VERSION } from '../../../geo/shelf/versions.ts';
import { readerFor } from '../../../main/services/map/tell-format.ts';

interface Elements {
  readonly nodes: Map<number, { lat: number; lon: number; tags: Tags | undefined }>;
  readonly ways: { id: number; refs: number[]; tags: Tags }[];
  readonly relations: { id: number; tags: Tags; members: Member[] }[];
}

interface Tile {
  readonly nodes: Set<number>;
  readonly ways: Set<number>;
  readonly relations: Map<number, Member[]>;
}

/**
 * Makes a part of a small map the plain way, everything in memory and element by element: what the layers promise
 * (geo/shelf/layers.ts), spelled out as it reads. For tests to hold the program's own import against, and to read.
 */
export async function makePart(source: string, out: string): Promise<PartMeta> {
  const { elements, sha256, dataDate, notes, incomplete } = await readElements(source);
  const tiles = layTiles(elements);
  const pieces: Uint8Array[] = [PART_MAGIC];
  let at = PART_MAGIC.length;
  const put = (bytes: Uint8Array) => {
    pieces.push(bytes);
    at += bytes.length;
    return { offset: at - bytes.length, length: bytes.length, crc: crc32(bytes) };
  };
  const entries = [...tiles]
    .map(([key, tile]) => ({ key: key.split('/').map(Number), tile }))
    .sort((a, b) => a.key[0]! - b.key[0]! || a.key[1]! - b.key[1]!)
    .map(({ key, tile }) => ({
      layer: key[0]!,
      tile: key[1]!,
      ...put(encodeBlock(contentOf(elements, tile))),
    }));
  const directory = put(
    encodeDirectory({
      count: entries.length,
      layer: Uint8Array.from(entries, ({ layer }) => layer),
      tile: Float64Array.from(entries, ({ tile }) => tile),
      offset: Float64Array.from(entries, ({ offset }) => offset),
      length: Uint32Array.from(entries, ({ length }) => length),
      crc: Uint32Array.from(entries, ({ crc }) => crc),
    }),
  );
  const roads = elements.ways.filter(
    ({ tags }) => (wayKind(tags) ?? 9) !== WAY_KIND.around && wayKind(tags) !== undefined,
  );
  const meta: PartMeta = {
    source: { name: basename(source), sha256, bytes: (await stat(source)).size },
    ...(dataDate === undefined ? {} : { dataDate }),
    notes: [...notes],
    incomplete: [...incomplete],
    roads: roads.length,
    mainRoads: 0,
    minorRoads: roads.length,
    nodes: elements.nodes.size,
    box: boxOfRoads(elements, roads),
  };
  const said = put(Buffer.from(JSON.stringify(meta)));
  put(
    encodeTrailer(
      { choiceVersion: CHOICE_VERSION, directory, meta: said, fileBytes: at + TRAILER_BYTES },
      crc32,
    ),
  );
  await writeFile(out, Buffer.concat(pieces));
  return meta;
}

async function readElements(path: string) {
  const elements: Elements = { nodes: new Map(), ways: [], relations: [] };
  const handle = await open(path);
  try {
    const reader = await readerFor(handle, path);
    if (!reader.ok) throw new Error(reader.error.message);
    const read = await reader.value({
      handle,
      size: (await handle.stat()).size,
      name: path,
      withHash: true,
      pause: async () => {},
      sink: {
        nodes(batch) {
          for (let i = 0; i < batch.count; i++)
            elements.nodes.set(batch.id[i]!, { lat: batch.lat[i]!, lon: batch.lon[i]!, tags: batch.tags(i) });
        },
        way: ({ id, refs, count, tags }) =>
          elements.ways.push({ id, refs: [...refs.subarray(0, count)], tags: tags() }),
        relation: ({ id, tags, members }) => elements.relations.push({ id, tags, members: [...members()] }),
      },
    });
    if (!read.ok) throw new Error(read.error.message);
    const { sha256, dataDate, notes, incomplete = [] } = read.value;
    return { elements, sha256, dataDate, notes, incomplete };
  } finally {
    await handle.close();
  }
}

function layTiles({ nodes, ways, relations }: Elements): Map<string, Tile> {
  const tiles = new Map<string, Tile>();
  const tileAt = (layer: keyof typeof LAYER_ZOOM, number: number) => {
    const key = `${LAYER[layer]}/${number}`;
    const there = tiles.get(key) ?? { nodes: new Set(), ways: new Set(), relations: new Map() };
    tiles.set(key, there);
    return there;
  };
  const boxOf = (refs: readonly number[]) => {
    const maker = new BoxMaker();
    for (const ref of refs) {
      const node = nodes.get(ref);
      if (node) maker.add(node.lat, node.lon);
    }
    return maker.box();
  };
  const touched = (refs: readonly number[], zoom: number) => {
    const box = boxOf(refs);
    return box === undefined ? [] : numbersIn(rangeOfBox(box, zoom), zoom);
  };
  const bySegment = (refs: readonly number[], zoom: number) => [
    ...new Set(
      refs.flatMap((ref, i) => touched(refs.slice(Math.max(0, i - 1), i + 1), ref === undefined ? 0 : zoom)),
    ),
  ];
  const areas = relations.filter(({ tags }) => isArea(tags));
  const outer = new Set(areas.flatMap(({ members }) => outerOf(members)));
  const wayById = new Map(ways.map((way, i) => [way.id, i]));
  const used = new Set<number>();
  const ofWay = new Map<number, Set<Elements['relations'][number]>>();
  for (const relation of relations)
    for (const member of relation.members)
      if (member.type === 'way') ofWay.set(member.id, (ofWay.get(member.id) ?? new Set()).add(relation));
  for (const [i, { id, refs, tags }] of ways.entries()) {
    const kind = wayKind(tags);
    if (kind === undefined && !outer.has(id)) continue;
    for (const ref of refs) used.add(ref);
    const box = boxOf(refs);
    const small = box !== undefined && countIn(rangeOfBox(box, LAYER_ZOOM.near)) <= 4;
    if (kind === WAY_KIND.around && isNearOnly(tags) && small && !outer.has(id)) {
      for (const number of touched(refs, LAYER_ZOOM.near)) tileAt('near', number).ways.add(i);
      continue;
    }
    for (const number of bySegment(refs, LAYER_ZOOM.wide)) {
      const tile = tileAt('wide', number);
      tile.ways.add(i);
      for (const relation of ofWay.get(id) ?? []) {
        const members = relation.members.filter((member) => member.type === 'way' && member.id === id);
        if (members.length === 0) continue;
        if (isRestriction(relation.tags)) {
          if (members.some(({ role }) => role === 'from' || role === 'to'))
            tile.relations.set(relation.id, relation.members);
        } else if (isArea(relation.tags))
          tile.relations.set(relation.id, [...(tile.relations.get(relation.id) ?? []), ...members]);
      }
    }
    if (kind === WAY_KIND.ferry)
      for (const number of bySegment(refs, LAYER_ZOOM.far)) tileAt('far', number).ways.add(i);
    if (isZone(tags)) for (const number of touched(refs, LAYER_ZOOM.far)) tileAt('far', number).ways.add(i);
  }
  for (const { id, tags, members } of areas) {
    if (!isZone(tags)) continue;
    const edges = outerOf(members).flatMap((edge) => wayById.get(edge) ?? []);
    for (const number of touched(
      edges.flatMap((edge) => ways[edge]!.refs),
      LAYER_ZOOM.far,
    )) {
      const tile = tileAt('far', number);
      for (const edge of edges) tile.ways.add(edge);
      tile.relations.set(id, members);
    }
  }
  for (const [id, { lat, lon, tags }] of nodes) {
    if (tags === undefined || saysNothing(tags) || !(used.has(id) || isStandingNode(tags))) continue;
    const box = { south: lat, north: lat, west: lon, east: lon };
    for (const number of numbersIn(rangeOfBox(box, LAYER_ZOOM.wide), LAYER_ZOOM.wide))
      tileAt('wide', number).nodes.add(id);
  }
  return tiles;
}

function outerOf(members: readonly Member[]): number[] {
  return members
    .filter(({ type, role }) => type === 'way' && (role === 'outer' || role === ''))
    .map(({ id }) => id);
}

function contentOf(elements: Elements, tile: Tile): BlockContent {
  const ways = [...tile.ways].map((i) => elements.ways[i]!).sort((a, b) => a.id - b.id);
  const ids = [...new Set([...tile.nodes, ...ways.flatMap(({ refs }) => refs)])].sort((a, b) => a - b);
  const place = new Map(ids.map((id, i) => [id, i]));
  const sets: Uint8Array[] = [];
  const setOf = (tags: Tags) => sets.push(encodeTags(tags)) - 1;
  const tagged = ids.filter((id) => tile.nodes.has(id));
  const start = [0];
  for (const { refs } of ways) start.push(start.at(-1)! + refs.length);
  return {
    nodes: {
      count: ids.length,
      id: Float64Array.from(ids),
      lat: Float64Array.from(ids, (id) => elements.nodes.get(id)?.lat ?? Number.NaN),
      lon: Float64Array.from(ids, (id) => elements.nodes.get(id)?.lon ?? Number.NaN),
      tagged: {
        node: Uint32Array.from(tagged, (id) => place.get(id)!),
        set: Uint32Array.from(tagged, (id) => setOf(elements.nodes.get(id)!.tags!)),
      },
    },
    ways: {
      count: ways.length,
      id: Float64Array.from(ways, ({ id }) => id),
      kind: Uint8Array.from(ways, ({ tags }) => wayKind(tags) ?? EDGE),
      set: Uint32Array.from(ways, ({ tags }) => setOf(tags)),
      start: Uint32Array.from(start),
      refs: Uint32Array.from(ways.flatMap(({ refs }) => refs.map((ref) => place.get(ref)!))),
    },
    relations: [...tile.relations]
      .sort(([a], [b]) => a - b)
      .map(([id, members]) => ({
        id,
        set: setOf(elements.relations.find((relation) => relation.id === id)!.tags),
        members,
      })),
    sets,
  };
}

function boxOfRoads({ nodes }: Elements, roads: Elements['ways']): PartMeta['box'] {
  const maker = new BoxMaker();
  for (const { refs } of roads)
    for (const ref of refs) {
      const node = nodes.get(ref);
      if (node) maker.add(node.lat, node.lon);
    }
  return maker.box() ?? null;
}
