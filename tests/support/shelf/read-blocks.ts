import type { Tags } from '../../../geo/roads/roads.ts';
import type { Member } from '../../../geo/roads/sink.ts';
import type { BlockContent } from '../../../geo/shelf/block.ts';
import { decodeBlock } from '../../../geo/shelf/decode-block.ts';
import { LAYER } from '../../../geo/shelf/layers.ts';
import { decodeTags } from '../../../geo/shelf/tag-bytes.ts';
import type { OpenPart } from '../../../main/services/shelf/read-part.ts';

/** What a tile holds, by id, plainly. */
export interface PlainTile {
  readonly nodes: Map<number, { lat: number; lon: number; tags?: Tags }>;
  readonly ways: Map<number, { kind: number; tags: Tags; refs: number[] }>;
  readonly relations: Map<number, { tags: Tags; members: readonly Member[] }>;
}

/** The tiles of the tiled layers by "layer/tile". */
export function plainTiles({ directory, block }: OpenPart): Map<string, PlainTile> {
  const tiles = new Map<string, PlainTile>();
  for (let place = 0; place < directory.count; place++)
    if (directory.layer[place]! < LAYER.names)
      tiles.set(`${directory.layer[place]}/${directory.tile[place]}`, plainTile(decodeBlock(block(place))));
  return tiles;
}

function plainTile({ sets, nodes, ways, relations }: BlockContent): PlainTile {
  const tags = (set: number) => decodeTags(sets.at(set)!);
  const tile: PlainTile = { nodes: new Map(), ways: new Map(), relations: new Map() };
  for (let i = 0; i < nodes.count; i++)
    tile.nodes.set(nodes.id[i]!, { lat: nodes.lat[i]!, lon: nodes.lon[i]! });
  for (const [i, node] of nodes.tagged.node.entries())
    tile.nodes.get(nodes.id[node]!)!.tags = tags(nodes.tagged.set[i]!);
  for (let way = 0; way < ways.count; way++)
    tile.ways.set(ways.id[way]!, {
      kind: ways.kind[way]!,
      tags: tags(ways.set[way]!),
      refs: Array.from(ways.refs.subarray(ways.start[way], ways.start[way + 1]), (node) => nodes.id[node]!),
    });
  for (const { id, set, members } of relations) tile.relations.set(id, { tags: tags(set), members });
  return tile;
}
