import type { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { DRAWN, type NodeChoice } from '../../../../../geo/shelf/import/choose.ts';
import type { ChosenTexts } from '../../../../../geo/shelf/import/chosen-texts.ts';
import { writeNode } from '../../../../../geo/shelf/import/node-record.ts';
import { TILE_RECORD } from '../../../../../geo/shelf/import/tile-record.ts';
import { tileNumberAt } from '../../../../../geo/shelf/import/way-tiles.ts';
import { LAYER_ZOOM, type TiledLayer } from '../../../../../geo/shelf/layers.ts';
import type { NamesOut } from '../names-out.ts';
import type { TilesOut } from '../tiles-out.ts';

interface Tagged {
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly choice: NodeChoice;
  readonly texts: ChosenTexts;
}

/** A node with tags as it waits to be handed to its tiles; the first byte is 1 where it stands for itself. */
export function writeTagged(node: Tagged, out: ByteStore): void {
  out.room(64);
  out.bytes[out.at++] = node.choice.stands ? 1 : 0;
  out.bytes[out.at++] = node.choice.service ? 1 : 0;
  out.bytes[out.at++] = node.choice.drawn;
  out.double(node.id);
  out.double(node.lat);
  out.double(node.lon);
  for (const text of [node.texts.tags, node.texts.drawn, node.texts.name]) {
    out.room(8);
    out.uint(text.at);
    out.append(text.bytes, 0, text.at);
  }
}

/** Hands waiting nodes to the tiles in which they lie, and their names to the index. */
export function spreadTagged(store: ByteStore, length: number, tiles: TilesOut, names: NamesOut): void {
  const scratch = tiles.body;
  while (store.at < length) {
    const { bytes } = store;
    const service = bytes[store.at + 1] === 1;
    const drawn = bytes[store.at + 2]!;
    store.at += 3;
    const id = store.readDouble();
    const lat = store.readDouble();
    const lon = store.readDouble();
    const take = () => {
      const size = store.readUint();
      store.at += size;
      return bytes.subarray(store.at - size, store.at);
    };
    const tags = take();
    const thinned = take();
    const name = take();
    const put = (layer: TiledLayer, set: Uint8Array) => {
      scratch.at = 0;
      writeNode({ id, lat, lon, tags: set }, scratch);
      tiles.put(layer, TILE_RECORD.node, tileNumberAt(lat, lon, LAYER_ZOOM[layer]));
    };
    put('wide', tags);
    if (service) put('service', tags);
    if (drawn !== DRAWN.no) put('draw8', thinned);
    if (drawn === DRAWN.at8and5) put('draw5', thinned);
    if (name.length > 0) names.put(name, { id, lat, lon });
  }
}
