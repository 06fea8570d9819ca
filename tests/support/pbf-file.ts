import { deflateSync } from 'node:zlib';

/** Elements of a small map, in the order they are to be written. */
export interface PbfNode {
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly tags?: Readonly<Record<string, string>>;
  readonly visible?: boolean;
}

export interface PbfWay {
  readonly id: number;
  readonly refs: readonly number[];
  readonly tags?: Readonly<Record<string, string>>;
  readonly visible?: boolean;
  /** places written with the way (LocationsOnWays) */
  readonly places?: readonly (readonly [number, number])[];
}

export interface PbfRelation {
  readonly id: number;
  readonly members: readonly {
    readonly type: 'node' | 'way' | 'relation';
    readonly id: number;
    readonly role: string;
  }[];
  readonly tags?: Readonly<Record<string, string>>;
  readonly visible?: boolean;
}

/** One block: its elements share a string table. */
export interface PbfBlock {
  readonly nodes?: readonly PbfNode[];
  readonly ways?: readonly PbfWay[];
  readonly relations?: readonly PbfRelation[];
}

export interface PbfOptions {
  readonly dense?: boolean;
  readonly compression?: 'zlib' | 'raw' | 'lzma' | 'bzip2' | 'lz4' | 'zstd';
  readonly features?: readonly string[];
  readonly replicationTime?: number;
  readonly granularity?: number;
}

/** The bytes of a .osm.pbf file. */
export function pbfFile(blocks: readonly PbfBlock[], options: PbfOptions = {}): Uint8Array {
  return pbfHolding(
    blocks.map((block) => blockOf(block, options)),
    options,
  );
}

/** The same of blocks whose bytes are already there. */
export function pbfHolding(contents: readonly Uint8Array[], options: PbfOptions = {}): Uint8Array {
  const header = bytesOf([
    ...(options.features ?? ['OsmSchema-V0.6', 'DenseNodes']).map((feature) => field(4, text(feature))),
    ...(options.replicationTime === undefined ? [] : [number(32, options.replicationTime)]),
  ]);
  return bytesOf([
    blobOf('OSMHeader', header, options),
    ...contents.map((content) => blobOf('OSMData', content, options)),
  ]);
}

/** A blob with its header and the length before it. */
function blobOf(type: string, content: Uint8Array, { compression = 'zlib' }: PbfOptions): Uint8Array {
  const blob =
    compression === 'raw'
      ? field(1, content)
      : bytesOf([
          number(2, content.length),
          field({ zlib: 3, lzma: 4, bzip2: 5, lz4: 6, zstd: 7 }[compression], deflateSync(content)),
        ]);
  const header = bytesOf([field(1, text(type)), number(3, blob.length)]);
  const lead = Buffer.alloc(4);
  lead.writeUInt32BE(header.length);
  return bytesOf([lead, header, blob]);
}

function blockOf(block: PbfBlock, { dense = true, granularity = 100 }: PbfOptions): Uint8Array {
  const strings = new Map<string, number>([['', 0]]);
  const string = (value: string): number => {
    const known = strings.get(value);
    if (known !== undefined) return known;
    strings.set(value, strings.size);
    return strings.size - 1;
  };
  const unit = (degrees: number) => Math.round((degrees * 1e9) / granularity);
  const groups: Uint8Array[] = [];
  const nodes = block.nodes ?? [];
  if (nodes.length > 0)
    groups.push(
      dense
        ? field(2, denseNodes(nodes, string, unit))
        : bytesOf(nodes.map((node) => field(1, plainNode(node, string, unit)))),
    );
  if (block.ways) groups.push(bytesOf(block.ways.map((way) => field(3, wayOf(way, string, unit)))));
  if (block.relations)
    groups.push(bytesOf(block.relations.map((relation) => field(4, relationOf(relation, string)))));
  const table = bytesOf([...strings.keys()].map((value) => field(1, text(value))));
  return bytesOf([
    field(1, table),
    ...groups.map((group) => field(2, group)),
    ...(granularity === 100 ? [] : [number(17, granularity)]),
  ]);
}

type Intern = (value: string) => number;
type Unit = (degrees: number) => number;

function denseNodes(nodes: readonly PbfNode[], string: Intern, unit: Unit): Uint8Array {
  const texts = nodes.flatMap(({ tags }) => [
    ...Object.entries(tags ?? {}).flatMap(([key, value]) => [string(key), string(value)]),
    0,
  ]);
  const marked = nodes.some((node) => node.visible !== undefined);
  return bytesOf([
    field(1, deltas(nodes.map((node) => node.id))),
    ...(marked ? [field(5, field(6, varints(nodes.map((node) => (node.visible === false ? 0 : 1)))))] : []),
    field(8, deltas(nodes.map((node) => unit(node.lat)))),
    field(9, deltas(nodes.map((node) => unit(node.lon)))),
    ...(texts.some((index) => index > 0) ? [field(10, varints(texts))] : []),
  ]);
}

function plainNode(node: PbfNode, string: Intern, unit: Unit): Uint8Array {
  return bytesOf([
    bytesOf([varint(1 << 3), zigzag(node.id)]),
    ...tagFields(node.tags, string),
    ...visibleField(node.visible),
    bytesOf([varint(8 << 3), zigzag(unit(node.lat))]),
    bytesOf([varint(9 << 3), zigzag(unit(node.lon))]),
  ]);
}

function wayOf(way: PbfWay, string: Intern, unit: Unit): Uint8Array {
  return bytesOf([
    number(1, way.id),
    ...tagFields(way.tags, string),
    ...visibleField(way.visible),
    field(8, deltas(way.refs)),
    ...(way.places
      ? [
          field(9, deltas(way.places.map(([lat]) => unit(lat)))),
          field(10, deltas(way.places.map(([, lon]) => unit(lon)))),
        ]
      : []),
  ]);
}

function relationOf(relation: PbfRelation, string: Intern): Uint8Array {
  const { members } = relation;
  return bytesOf([
    number(1, relation.id),
    ...tagFields(relation.tags, string),
    ...visibleField(relation.visible),
    field(8, varints(members.map((member) => string(member.role)))),
    field(9, deltas(members.map((member) => member.id))),
    field(10, varints(members.map((member) => ['node', 'way', 'relation'].indexOf(member.type)))),
  ]);
}

function tagFields(tags: Readonly<Record<string, string>> | undefined, string: Intern): Uint8Array[] {
  const entries = Object.entries(tags ?? {});
  if (entries.length === 0) return [];
  return [
    field(2, varints(entries.map(([key]) => string(key)))),
    field(3, varints(entries.map(([, value]) => string(value)))),
  ];
}

function visibleField(visible: boolean | undefined): Uint8Array[] {
  return visible === undefined ? [] : [field(4, number(6, visible ? 1 : 0))];
}

export function field(id: number, content: Uint8Array): Uint8Array {
  return bytesOf([varint(id * 8 + 2), varint(content.length), content]);
}

export function number(id: number, value: number): Uint8Array {
  return bytesOf([varint(id * 8), varint(value)]);
}

function varint(value: number | bigint): Uint8Array {
  let rest = BigInt.asUintN(64, BigInt(value));
  const bytes: number[] = [];
  do {
    const low = Number(rest & 0x7fn);
    rest >>= 7n;
    bytes.push(rest > 0n ? low | 0x80 : low);
  } while (rest > 0n);
  return Uint8Array.from(bytes);
}

function zigzag(value: number): Uint8Array {
  const big = BigInt(value);
  return varint(big >= 0n ? big * 2n : -big * 2n - 1n);
}

function varints(values: readonly number[]): Uint8Array {
  return bytesOf(values.map(varint));
}

function deltas(values: readonly number[]): Uint8Array {
  return bytesOf(values.map((value, i) => zigzag(value - (values[i - 1] ?? 0))));
}

function text(value: string): Uint8Array {
  return new TextEncoder().encode(value);
}

export function bytesOf(parts: readonly Uint8Array[]): Uint8Array {
  return Buffer.concat(parts);
}
