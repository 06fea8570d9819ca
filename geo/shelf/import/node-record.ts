import type { ByteStore } from './byte-store.ts';

const HEAD_BYTES = 32;

/** A node with tags as it is handed on to a tile: id, place, tag set. */
export function writeNode(
  {
    id,
    lat,
    lon,
    tags,
  }: { readonly id: number; readonly lat: number; readonly lon: number; readonly tags: Uint8Array },
  out: ByteStore,
): void {
  out.room(HEAD_BYTES);
  out.double(id);
  out.double(lat);
  out.double(lon);
  out.uint(tags.length);
  out.append(tags);
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
