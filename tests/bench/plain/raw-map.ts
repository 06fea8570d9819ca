import { createOSMStream } from 'osm-pbf-parser-node';

/** Tags and members as another reader gives them, untouched. */
export interface RawMap {
  readonly nodes: ReadonlyMap<number, RawTags>;
  readonly ways: ReadonlyMap<number, RawWay>;
  readonly relations: ReadonlyMap<number, RawRelation>;
}
export type RawTags = Readonly<Record<string, string>>;
export interface RawWay {
  readonly refs: readonly number[];
  readonly tags: RawTags;
}
export interface RawRelation {
  readonly members: readonly { readonly type: string; readonly ref: number; readonly role: string }[];
  readonly tags: RawTags;
}

interface Item {
  readonly type?: string;
  readonly id: number;
  readonly tags?: RawTags;
  readonly refs?: readonly number[];
  readonly members?: RawRelation['members'];
}

/** Reads an extract with osm-pbf-parser-node, which shares no line with the product's reader. */
export async function readRaw(path: string): Promise<RawMap> {
  const nodes = new Map<number, RawTags>();
  const ways = new Map<number, RawWay>();
  const relations = new Map<number, RawRelation>();
  for await (const item of createOSMStream(path) as AsyncIterable<Item>) {
    const tags = item.tags ?? {};
    if (item.type === 'node' && Object.keys(tags).length > 0) nodes.set(item.id, tags);
    if (item.type === 'way') ways.set(item.id, { refs: item.refs ?? [], tags });
    if (item.type === 'relation') relations.set(item.id, { members: item.members ?? [], tags });
  }
  return { nodes, ways, relations };
}
