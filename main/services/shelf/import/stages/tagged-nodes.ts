import type { ByteStore } from '../../../../../geo/shelf/import/byte-store.ts';
import { DRAWN, type NodeChoice } from '../../../../../geo/shelf/import/choose.ts';
import type { ChosenTexts } from '../../../../../geo/shelf/import/chosen-texts.ts';
import { writeNode, writeNodeTags } from '../../../../../geo/shelf/import/node-record.ts';
import { TILE_RECORD } from '../../../../../geo/shelf/import/tile-record.ts';
import { type CellRange, WayTiles } from '../../../../../geo/shelf/import/way-tiles.ts';
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

/**
 * A node with tags as it waits to be handed to its tiles; the first byte is 1 where it stands for itself, which
 * whoever places the nodes reads before the node is handed on.
 */
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

/** Where a text of a waiting node lies. */
interface Span {
  from: number;
  to: number;
}

/** Hands waiting nodes to the tiles in which they lie, and their names to the index. */
export class TaggedSpreader {
  private readonly tiles: TilesOut;
  private readonly names: NamesOut;
  private readonly finder = new WayTiles();
  private readonly tags: Span = { from: 0, to: 0 };
  private readonly thinned: Span = { from: 0, to: 0 };
  private readonly name: Span = { from: 0, to: 0 };

  constructor(tiles: TilesOut, names: NamesOut) {
    this.tiles = tiles;
    this.names = names;
  }

  /** Reads the waiting nodes of the store, from where it stands to `length`. */
  spread(store: ByteStore, length: number): void {
    const { tags, thinned, name } = this;
    while (store.at < length) {
      const service = store.bytes[store.at + 1] === 1;
      const drawn = store.bytes[store.at + 2]!;
      store.at += 3;
      const id = store.readDouble();
      const lat = store.readDouble();
      const lon = store.readDouble();
      for (const span of [tags, thinned, name]) pass(store, span);
      const cell = this.finder.cellAt(lat, lon);
      const { body } = this.tiles;
      body.at = 0;
      writeNode(id, lat, lon, body);
      const head = body.at;
      writeNodeTags(store.bytes, tags.from, tags.to, body);
      this.put('wide', cell);
      if (service) this.put('service', cell);
      if (name.to > name.from) {
        this.names.begin(store.bytes, name.from, name.to);
        this.names.put(id, lat, lon);
      }
      if (drawn === DRAWN.no) continue;
      body.at = head;
      writeNodeTags(store.bytes, thinned.from, thinned.to, body);
      this.put('draw8', cell);
      if (drawn === DRAWN.at8and5) this.put('draw5', cell);
    }
  }

  private put(layer: TiledLayer, cell: CellRange): void {
    this.tiles.put(layer, TILE_RECORD.node, this.finder.oneTile(cell, LAYER_ZOOM[layer]));
  }
}

function pass(store: ByteStore, span: Span): void {
  const size = store.readUint();
  span.from = store.at;
  store.at += size;
  span.to = store.at;
}
