import { open } from 'node:fs/promises';
import { createOSMStream } from 'osm-pbf-parser-node';
import { describe, expect, it } from 'vitest';
import { readPbfFile } from '../../main/services/map/read-pbf-file.ts';
import { pbfFile } from '../support/pbf-file.ts';
import { scratchFiles, worked } from '../support/scratch-files.ts';

// Source: npm's osm-pbf-parser-node 1.1.4 (MIT), an independent reader on the published protobuf definitions.

const write = scratchFiles();

interface Seen {
  readonly nodes: Map<number, string>;
  readonly ways: Map<number, string>;
  readonly relations: Map<number, string>;
}

const places = (lat: number, lon: number) => `${lat.toFixed(7)} ${lon.toFixed(7)}`;

async function ours(path: string): Promise<Seen> {
  const seen: Seen = { nodes: new Map(), ways: new Map(), relations: new Map() };
  const handle = await open(path);
  worked(
    await readPbfFile({
      handle,
      size: 0,
      name: path,
      withHash: false,
      pause: async () => {},
      sink: {
        nodes(batch) {
          for (let i = 0; i < batch.count; i++)
            seen.nodes.set(
              batch.id[i]!,
              `${places(batch.lat[i]!, batch.lon[i]!)} ${JSON.stringify(batch.tags(i) ?? {})}`,
            );
        },
        way: (way) =>
          seen.ways.set(way.id, `${[...way.refs.subarray(0, way.count)]} ${JSON.stringify(way.tags())}`),
        relation: (relation) =>
          seen.relations.set(
            relation.id,
            `${relation.members().map((member) => `${member.type} ${member.id} ${member.role}`)} ${JSON.stringify(relation.tags)}`,
          ),
      },
    }),
  );
  await handle.close();
  return seen;
}

interface TheirItem {
  readonly type?: string;
  readonly id: number;
  readonly lat: number;
  readonly lon: number;
  readonly refs: readonly number[];
  readonly members: readonly { readonly type: string; readonly ref: number; readonly role: string }[];
  readonly tags?: Readonly<Record<string, string>>;
}

async function theirs(path: string): Promise<Seen> {
  const seen: Seen = { nodes: new Map(), ways: new Map(), relations: new Map() };
  for await (const each of createOSMStream(path)) {
    const item = each as TheirItem;
    const tags = JSON.stringify(item.tags ?? {});
    if (item.type === 'node') seen.nodes.set(item.id, `${places(item.lat, item.lon)} ${tags}`);
    else if (item.type === 'way') seen.ways.set(item.id, `${[...item.refs]} ${tags}`);
    else if (item.type === 'relation')
      seen.relations.set(
        item.id,
        `${item.members.map((member) => `${member.type} ${member.ref} ${member.role}`)} ${tags}`,
      );
  }
  return seen;
}

const nodes = Array.from({ length: 3000 }, (_, k) => ({
  id: 1_000_000_000 + k * 7 - (k % 3) * 100,
  lat: ((k * 7919) % 1_800_000) / 1e4 - 90,
  lon: ((k * 104_729) % 3_600_000) / 1e4 - 180,
  ...(k % 11 === 0 ? { tags: { highway: 'crossing', name: `Größe ${k} 橋` } } : {}),
}));
const ways = Array.from({ length: 300 }, (_, k) => ({
  id: 500 + k,
  refs: nodes.slice(k * 5, k * 5 + 2 + (k % 9)).map((node) => node.id),
  tags: { highway: 'residential', ref: `${k}`, maxheight: `${3 + k / 100}` },
}));
const relations = Array.from({ length: 50 }, (_, k) => ({
  id: 900 + k,
  members: [
    { type: 'way' as const, id: 500 + k, role: 'from' },
    { type: 'node' as const, id: 1_000_000_000 + k, role: 'via' },
    { type: 'relation' as const, id: 900, role: '' },
  ],
  tags: { type: 'restriction', restriction: 'no_left_turn' },
}));

describe('every element of a PBF file', () => {
  for (const dense of [true, false])
    it(`with ${dense ? 'dense' : 'plain'} nodes is what an independent reader sees`, async () => {
      const path = write(`${dense}.osm.pbf`, pbfFile([{ nodes }, { ways }, { relations }], { dense }));
      const seen = await ours(path);
      expect([seen.nodes.size, seen.ways.size, seen.relations.size]).toEqual([
        new Set(nodes.map((node) => node.id)).size,
        300,
        50,
      ]);
      expect(seen).toEqual(await theirs(path));
    });
});
