import { execFileSync } from 'node:child_process';
import { closeSync, existsSync, mkdirSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { readBlobHeader, unpackBlob } from '../../../geo/roads/pbf/blob.ts';
import { Cursor } from '../../../geo/roads/pbf/cursor.ts';
import { kindsIn } from '../../../geo/roads/pbf/kinds.ts';
import { unpack } from '../../../main/services/map/unpack.ts';
import { extractsIn } from '../make-large-map.ts';

const BENCH_FOLDER = '.bench';
/** Cells of the grid, degrees; each holds one extract, moved there. */
const CELL_LON = 2;
const ROWS = { from: -60, to: 59 };
const COLUMNS = 360 / CELL_LON;
const UNITS_PER_DEGREE = 1e7;

type Kind = 'nodes' | 'ways' | 'relations';

/** An extract with ids from 1 on, its blocks unpacked. */
interface Extract {
  readonly bytes: number;
  readonly header: Uint8Array;
  readonly blocks: Readonly<Record<Kind, readonly Uint8Array[]>>;
  /** how many ids of each kind it uses, those of things it only refers to included */
  readonly ids: Readonly<Record<Kind, number>>;
  readonly corner: { readonly lat: number; readonly lon: number };
}

/** How far a copy is moved. */
interface Shift {
  readonly ids: Readonly<Record<Kind, number>>;
  readonly lat: number;
  readonly lon: number;
}

/**
 * A PBF of about so many megabytes: the extracts over and over on a grid of cells, with ids that follow each other,
 * written kind by kind in order of id. Blocks are copied with their first id and place changed, so nothing is sorted
 * and little is held. Made once and kept.
 */
export function makeGridMap(folder: string, megabytes: number): string {
  const path = join(BENCH_FOLDER, `grid-${megabytes}.osm.pbf`);
  if (existsSync(path)) return path;
  mkdirSync(BENCH_FOLDER, { recursive: true });
  const extracts = extractsIn(folder).map((name) => readExtract(join(folder, name)));
  const bytes = extracts.reduce((sum, extract) => sum + extract.bytes, 0);
  const copies = Math.round(((megabytes * 1e6) / bytes) * extracts.length);
  const passing = `${path}.passing`;
  const file = openSync(passing, 'w');
  writeSync(file, blobOf('OSMHeader', extracts[0]!.header));
  for (const kind of ['nodes', 'ways', 'relations'] as const) {
    const ids = { nodes: 0, ways: 0, relations: 0 };
    for (let copy = 0; copy < copies; copy++) {
      const extract = extracts[copy % extracts.length]!;
      const shift = { ids: { ...ids }, ...placeOf(copy, extract) };
      for (const block of extract.blocks[kind]) writeSync(file, blobOf('OSMData', moved(block, shift)));
      for (const each of ['nodes', 'ways', 'relations'] as const) ids[each] += extract.ids[each];
    }
  }
  closeSync(file);
  renameSync(passing, path);
  return path;
}

/**
 * How far a copy stands from its extract, degrees. A larger map holds the copies of a smaller one where they are there.
 * @param corner the extract's south-west one
 */
export function gridShift(copy: number, corner: Extract['corner']): Extract['corner'] {
  const { lat, lon } = placeOf(copy, { corner });
  return { lat: lat / UNITS_PER_DEGREE, lon: lon / UNITS_PER_DEGREE };
}

/** Cell after cell, rows of latitude from the middle of the temperate zone outwards. */
function placeOf(copy: number, { corner }: Pick<Extract, 'corner'>): { lat: number; lon: number } {
  const rows = ROWS.to - ROWS.from + 1;
  const row = ROWS.from + ((Math.floor(copy / COLUMNS) + 105) % rows);
  const column = copy % COLUMNS;
  return {
    lat: row * UNITS_PER_DEGREE - Math.floor(corner.lat * UNITS_PER_DEGREE),
    lon: (column * CELL_LON - 180) * UNITS_PER_DEGREE - Math.floor(corner.lon * UNITS_PER_DEGREE),
  };
}

function readExtract(path: string): Extract {
  const renumbered = join(BENCH_FOLDER, 'renumbered.osm.pbf');
  execFileSync('osmium', ['renumber', path, '-O', '-o', renumbered, '-f', 'pbf,add_metadata=false']);
  const text = execFileSync('osmium', ['fileinfo', '-e', renumbered], { encoding: 'utf8' });
  const [, lon = '0', lat = '0'] = /Bounding box: \((-?[\d.]+),(-?[\d.]+)/u.exec(text) ?? [];
  const bytes = readFileSync(renumbered);
  const blocks: Record<Kind, Uint8Array[]> = { nodes: [], ways: [], relations: [] };
  const ids: Record<Kind, number> = { nodes: 0, ways: 0, relations: 0 };
  let header: Uint8Array = bytes;
  for (let at = 0; at < bytes.length; ) {
    const headerSize = bytes.readUInt32BE(at);
    const { type, size } = readBlobHeader(bytes.subarray(at + 4, at + 4 + headerSize), unpack);
    at += 4 + headerSize + size;
    const content = Uint8Array.from(unpackBlob(bytes.subarray(at - size, at), unpack));
    if (type === 'OSMHeader') header = content;
    else {
      const kinds = kindsIn(content);
      const kind = kinds.nodes ? 'nodes' : kinds.ways ? 'ways' : 'relations';
      blocks[kind].push(content);
      noteIds(content, ids);
    }
  }
  return { bytes: bytes.length, header, blocks, ids, corner: { lat: Number(lat), lon: Number(lon) } };
}

function noteIds(block: Uint8Array, most: Record<Kind, number>): void {
  const note = (kind: Kind, id: number) => {
    most[kind] = Math.max(most[kind], id);
  };
  eachElement(block, {
    dense: (dense) => {
      while (dense.next())
        if (dense.field === 1) for (const id of sums(dense.inside())) note('nodes', id);
        else dense.skip();
    },
    way: (way) => {
      while (way.next())
        if (way.field === 1) note('ways', way.signed());
        else if (way.field === 8) for (const id of sums(way.inside())) note('nodes', id);
        else way.skip();
    },
    relation: (relation) => {
      let members: number[] = [];
      while (relation.next())
        if (relation.field === 1) note('relations', relation.signed());
        else if (relation.field === 9) members = sums(relation.inside());
        else if (relation.field === 10) {
          const types = relation.inside();
          for (const member of members) note(KINDS[types.uint()]!, member);
        } else relation.skip();
    },
  });
}

const KINDS = ['nodes', 'ways', 'relations'] as const;

function eachElement(
  block: Uint8Array,
  take: Readonly<Record<'dense' | 'way' | 'relation', (element: Cursor) => void>>,
): void {
  const cursor = new Cursor(block);
  while (cursor.next()) {
    if (cursor.field !== 2) {
      cursor.skip();
      continue;
    }
    const group = cursor.inside();
    while (group.next())
      if (group.field === 2) take.dense(group.inside());
      else if (group.field === 3) take.way(group.inside());
      else if (group.field === 4) take.relation(group.inside());
      else group.skip();
  }
}

/** A block with everything in it moved. */
function moved(block: Uint8Array, shift: Shift): Uint8Array {
  return rewritten(new Cursor(block), {
    2: (group) =>
      rewritten(group, {
        2: (dense) =>
          rewritten(dense, {
            1: (ids) => firstMoved(ids, shift.ids.nodes),
            8: (lats) => firstMoved(lats, shift.lat),
            9: (lons) => firstMoved(lons, shift.lon),
          }),
        3: (way) => rewritten(way, { 8: (refs) => firstMoved(refs, shift.ids.nodes) }, shift.ids.ways),
        4: (relation) => movedRelation(relation, shift),
      }),
  });
}

/** The types of the members stand behind their ids. */
function movedRelation(relation: Cursor, shift: Shift): Uint8Array {
  const look = new Cursor(relation.bytes, relation.pos, relation.end);
  let types: number[] = [];
  while (look.next())
    if (look.field === 10) {
      const inner = look.inside();
      types = [];
      while (inner.pos < inner.end) types.push(inner.uint());
    } else look.skip();
  return rewritten(
    relation,
    {
      9: (members) => {
        const pieces: Uint8Array[] = [];
        let before = 0;
        for (const [i, id] of sums(members).entries()) {
          const to = id + shift.ids[KINDS[types[i]!]!];
          pieces.push(zigzag(to - before));
          before = to;
        }
        return Buffer.concat(pieces);
      },
    },
    shift.ids.relations,
  );
}

type Rewrite = Readonly<Record<number, (inner: Cursor) => Uint8Array>>;

/** A message with some of its fields made anew. @param idShift added to field 1 where that is a number */
function rewritten(message: Cursor, fields: Rewrite, idShift?: number): Uint8Array {
  const pieces: Uint8Array[] = [];
  for (;;) {
    const from = message.pos;
    if (!message.next()) return Buffer.concat(pieces);
    const { field, wire } = message;
    const rewrite = fields[field];
    if (rewrite && wire === 2) {
      const content = rewrite(message.inside());
      pieces.push(varint(field * 8 + 2), varint(content.length), content);
    } else if (idShift !== undefined && field === 1 && wire === 0)
      pieces.push(varint(8), varint(message.signed() + idShift));
    else {
      message.skip();
      pieces.push(message.bytes.subarray(from, message.pos));
    }
  }
}

/** Differences of which the first, the only one that stands for itself, is moved. */
function firstMoved(list: Cursor, by: number): Uint8Array {
  const first = unzigzag(list.uint());
  return Buffer.concat([zigzag(first + by), list.bytes.subarray(list.pos, list.end)]);
}

function sums(list: Cursor): number[] {
  const all: number[] = [];
  let sum = 0;
  while (list.pos < list.end) {
    sum += unzigzag(list.uint());
    all.push(sum);
  }
  return all;
}

function unzigzag(value: number): number {
  return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
}

function zigzag(value: number): Uint8Array {
  return varint(value < 0 ? -2 * value - 1 : 2 * value);
}

function varint(value: number): Uint8Array {
  const bytes: number[] = [];
  let rest = value;
  for (; rest >= 0x80; rest = Math.floor(rest / 0x80)) bytes.push((rest % 0x80) | 0x80);
  bytes.push(rest);
  return Uint8Array.from(bytes);
}

function blobOf(type: 'OSMHeader' | 'OSMData', content: Uint8Array): Uint8Array {
  const packed = deflateSync(content);
  const blob = Buffer.concat([varint(16), varint(content.length), varint(26), varint(packed.length), packed]);
  const header = Buffer.concat([
    varint(10),
    varint(type.length),
    Buffer.from(type),
    varint(24),
    varint(blob.length),
  ]);
  const lead = Buffer.alloc(4);
  lead.writeUInt32BE(header.length);
  return Buffer.concat([lead, header, blob]);
}
