import { grown } from '../../../../geo/roads/id-table.ts';
import { Reader } from '../../../../geo/shelf/bytes.ts';
import { ByteSets } from '../../../../geo/shelf/import/byte-sets.ts';
import type { ByteStore } from '../../../../geo/shelf/import/byte-store.ts';
import { CELL_ZOOM, columnAt, RowFinder } from '../../../../geo/shelf/import/grid.ts';
import { foldName, NAME_KINDS, type NameKind } from '../../../../geo/shelf/names.ts';
import { readText } from '../../../../geo/shelf/tag-bytes.ts';

/** One entry is kept of a road's name in each tile of this zoom. */
const SAME_ROAD_ZOOM = 10;

/** The cell in which a road's name is listed but once. */
export function sameRoadCell(rows: RowFinder, lat: number, lon: number): number {
  const shift = CELL_ZOOM - SAME_ROAD_ZOOM;
  return ((rows.rowAt(lat) >> shift) << SAME_ROAD_ZOOM) | (columnAt(lon) >> shift);
}

/** All that bears one name and is of one kind, by its places in a list; of roads one in each cell. */
export interface Bearers {
  readonly name: string;
  readonly folded: string;
  readonly kind: NameKind;
  readonly byCell: ReadonlyMap<number, number>;
}

/** Where bearers of names are and what they are, in lists. */
export class BearerList {
  count = 0;
  id = new Float64Array(1024);
  lat = new Float64Array(1024);
  lon = new Float64Array(1024);
  readonly what: string[] = [];

  clear(): void {
    this.count = 0;
    this.what.length = 0;
  }

  add(): number {
    if (this.count === this.id.length) {
      this.id = grown(this.id);
      this.lat = grown(this.lat);
      this.lon = grown(this.lon);
    }
    return this.count++;
  }
}

/** Reads names, one bucket after the other. */
export class NameReader {
  /** of the bucket read last */
  readonly list = new BearerList();
  private readonly texts = new ByteSets();
  private readonly rows = new RowFinder();

  /** Reads a bucket; of a road's pieces within one tile of SAME_ROAD_ZOOM the one of the lowest id is kept. */
  read(store: ByteStore, length: number): Bearers[] {
    const { list, texts, rows } = this;
    list.clear();
    texts.clear();
    const all = new Map<string, Bearers & { readonly byCell: Map<number, number> }>();
    const known: {
      readonly bearers: { readonly kind: NameKind; readonly byCell: Map<number, number> };
      readonly what: string;
    }[] = [];
    let others = 0;
    store.at = 0;
    while (store.at < length) {
      const size = store.readUint();
      const text = texts.add(store.bytes, store.at, store.at + size);
      store.at += size;
      const id = store.readDouble();
      const lat = store.readDouble();
      const lon = store.readDouble();
      // each text is made but once
      known[text] ??= bearersOf(new Reader(texts.store.bytes, texts.start[text], texts.start[text + 1]), all);
      const { bearers, what } = known[text];
      const cell = bearers.kind === 'road' ? sameRoadCell(rows, lat, lon) : --others;
      const there = bearers.byCell.get(cell);
      if (there !== undefined && list.id[there]! <= id) continue;
      const at = there ?? list.add();
      bearers.byCell.set(cell, at);
      list.id[at] = id;
      list.lat[at] = lat;
      list.lon[at] = lon;
      list.what[at] = what;
    }
    return [...all.values()];
  }
}

function bearersOf(reader: Reader, all: Map<string, Bearers & { readonly byCell: Map<number, number> }>) {
  const name = readText(reader);
  const said = readText(reader);
  const kind = NAME_KINDS.find((one) => one === said) ?? 'site';
  const what = readText(reader);
  const key = `${kind} ${name}`;
  const bearers = all.get(key) ?? { name, folded: foldName(name), kind, byCell: new Map() };
  all.set(key, bearers);
  return { bearers, what };
}
