import type { Layer } from '../layers.ts';
import type { ByteStore } from './byte-store.ts';

/** What is handed on to a tile: a way (record and places) or a node. */
export const TILE_RECORD = { way: 0, node: 1 } as const;
export type TileRecordKind = (typeof TILE_RECORD)[keyof typeof TILE_RECORD];

/** length 4, layer 1, kind 1, tile 4 */
export const TILE_HEAD_BYTES = 10;

/** Writes what stands before each record of a tile; `length` bytes of it follow. */
export function writeTileHead(out: ByteStore, { layer, kind, tile, length }: TileHead): void {
  out.view.setUint32(out.at, length, true);
  out.bytes[out.at + 4] = layer;
  out.bytes[out.at + 5] = kind;
  out.view.setUint32(out.at + 6, tile, true);
  out.at += TILE_HEAD_BYTES;
}

export interface TileHead {
  readonly layer: Layer;
  readonly kind: TileRecordKind;
  readonly tile: number;
  readonly length: number;
}

/** The records of one tile of one layer: where each begins in the store. */
export interface TileGroup {
  readonly layer: number;
  readonly tile: number;
  readonly ways: number[];
  readonly nodes: number[];
}

/** Sorts out which records belong to which tile; layers and tiles in order, the records of each in order of id. */
export function groupRecords(store: ByteStore, length: number): TileGroup[] {
  const groups = new Map<number, TileGroup>();
  let last: TileGroup | undefined;
  for (let at = 0; at < length; ) {
    const size = store.view.getUint32(at, true);
    const layer = store.bytes[at + 4]!;
    const kind = store.bytes[at + 5]!;
    const tile = store.view.getUint32(at + 6, true);
    at += TILE_HEAD_BYTES;
    if (last === undefined || last.tile !== tile || last.layer !== layer) {
      const key = layer * 2 ** 32 + tile;
      last = groups.get(key);
      if (last === undefined) {
        last = { layer, tile, ways: [], nodes: [] };
        groups.set(key, last);
      }
    }
    (kind === TILE_RECORD.way ? last.ways : last.nodes).push(at);
    at += size;
  }
  const all = [...groups.values()].sort((a, b) => a.layer - b.layer || a.tile - b.tile);
  for (const { ways, nodes } of all) {
    const { view, bytes } = store;
    const idOf = (at: number, idAt: number) => view.getFloat64(at + idAt, true);
    // records come in runs of ascending ids, which sorting makes use of; of one way its own stands before an edge
    ways.sort((a, b) => idOf(a, WAY_ID_AT) - idOf(b, WAY_ID_AT) || (bytes[a]! & 3) - (bytes[b]! & 3));
    nodes.sort((a, b) => idOf(a, NODE_ID_AT) - idOf(b, NODE_ID_AT));
  }
  return all;
}

/** Where the id stands in a way's record (way-record.ts) and in a node's (node-record.ts). */
const WAY_ID_AT = 2;
const NODE_ID_AT = 0;
