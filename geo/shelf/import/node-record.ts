import type { ByteStore } from './byte-store.ts';

const HEAD_BYTES = 32;

/** A node with tags as it is handed on to a tile: id, place, and behind them its tag set (`writeNodeTags`). */
export function writeNode(id: number, lat: number, lon: number, out: ByteStore): void {
  out.room(HEAD_BYTES);
  out.double(id);
  out.double(lat);
  out.double(lon);
}

/** @param bytes of which from … to are the tag set */
export function writeNodeTags(bytes: Uint8Array, from: number, to: number, out: ByteStore): void {
  out.room(8);
  out.uint(to - from);
  out.append(bytes, from, to);
}

/** A node as it is read; its tags are tagsFrom … tagsTo of the store's bytes. */
export interface NodeRead {
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly tagsFrom: number;
  readonly tagsTo: number;
}

export function readNode(store: ByteStore): NodeRead {
  const id = store.readDouble();
  const lat = store.readDouble();
  const lon = store.readDouble();
  const length = store.readUint();
  const tagsFrom = store.at;
  store.at += length;
  return { id, lat, lon, tagsFrom, tagsTo: store.at };
}
