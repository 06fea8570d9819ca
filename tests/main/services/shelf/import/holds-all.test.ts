import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isNearOnly } from '../../../../../geo/roads/keep.ts';
import { LAYER } from '../../../../../geo/shelf/layers.ts';
import { importPart } from '../../../../../main/services/shelf/import/import-part.ts';
import { runHere } from '../../../../../main/services/shelf/import/runner.ts';
import { openPart } from '../../../../../main/services/shelf/read-part.ts';
import { type PbfBlock, pbfFile } from '../../../../support/pbf-file.ts';
import { scratchFiles, worked } from '../../../../support/scratch-files.ts';
import { makePart } from '../../../../support/shelf/make-part.ts';
import { jsonOf, type RandomMap, randomMap, xmlOf } from '../../../../support/shelf/random-map.ts';
import { type PlainTile, plainTiles } from '../../../../support/shelf/read-blocks.ts';

const write = scratchFiles();

/** Imports a map, and lays it out the plain way too. */
async function bothWays(map: string) {
  const ours = write('ours.part', '');
  const plain = write('plain.part', '');
  const meta = worked(
    await importPart({ path: map, name: 'map' }, ours, join(map, '..', 'temp'), {}, runHere),
  );
  await makePart(map, plain);
  const read = (path: string) => {
    const part = openPart(path);
    const tiles = plainTiles(part);
    part.close();
    return tiles;
  };
  return { meta, ours: read(ours), plain: read(plain) };
}

/** States that a tile holds all that another does, as it is there; what only surrounds no road may be missing. */
function expectHolds(where: string, ours: PlainTile | undefined, plain: PlainTile): void {
  for (const [id, way] of plain.ways) {
    const own = ours?.ways.get(id);
    if (own === undefined && way.kind === 2 && isNearOnly(way.tags)) continue;
    expect(own, `${where} way ${id}`).toEqual(way.kind === 3 ? { ...way, tags: {} } : way);
    for (const ref of way.refs) {
      const node = plain.nodes.get(ref)!;
      expect(ours?.nodes.get(ref), `${where} node ${ref}`).toMatchObject({ lat: node.lat, lon: node.lon });
    }
  }
  for (const [id, node] of plain.nodes)
    if (node.tags !== undefined) expect(ours?.nodes.get(id), `${where} node ${id}`).toEqual(node);
  for (const [id, relation] of plain.relations) {
    // for the sake of a way that is there
    const held = relation.members.filter((member) => isHeld(member, relation.tags['type']));
    if (!held.some((member) => ours?.ways.has(member.id))) continue;
    const own = ours?.relations.get(id);
    expect(own?.tags, `${where} relation ${id}`).toEqual(relation.tags);
    const members = new Set(own?.members.map((member) => JSON.stringify(member)));
    for (const member of relation.tags['type']?.startsWith('restriction') ? relation.members : held)
      expect(members).toContain(JSON.stringify(member));
  }
}

function isHeld({ type, role }: { readonly type: string; readonly role: string }, of: string | undefined) {
  const roles = of?.startsWith('restriction') ? ['from', 'to'] : ['outer', ''];
  return type === 'way' && roles.includes(role);
}

function expectHoldsAll({ ours, plain }: Awaited<ReturnType<typeof bothWays>>): void {
  for (const [key, tile] of plain) expectHolds(key, ours.get(key), tile);
}

/** In blocks of a few elements, one kind after the other, the last of a kind and the first of the next together. */
function sortedBlocks({ nodes, ways, relations }: RandomMap, size: number): PbfBlock[] {
  const blocks: PbfBlock[] = [];
  const cut = <T>(all: readonly T[], block: (some: readonly T[]) => PbfBlock) => {
    for (let i = 0; i < all.length; i += size) blocks.push(block(all.slice(i, i + size)));
  };
  cut(nodes, (some) => ({ nodes: some }));
  const mixed = blocks.pop();
  const before = blocks.length;
  cut(ways, (some) => ({ ways: some }));
  if (mixed) blocks.splice(before, 1, { ...mixed, ...blocks[before] });
  cut(relations, (some) => ({ relations: some }));
  return blocks;
}

const SOMEWHERE = fc.constantFrom({ lat: 50, lon: 7 }, { lat: -34, lon: 179.9 }, { lat: 69, lon: -1 });

describe('an import holds in every tile what belongs there', () => {
  it('of a sorted PBF file, however it is cut into blocks', async () => {
    await fc.assert(
      fc.asyncProperty(SOMEWHERE.chain(randomMap), fc.integer({ min: 1, max: 9 }), async (map, size) => {
        expectHoldsAll(await bothWays(write('map.osm.pbf', pbfFile(sortedBlocks(map, size)))));
      }),
      { numRuns: 12 },
    );
  });

  it('of a PBF file in any order', async () => {
    await fc.assert(
      fc.asyncProperty(SOMEWHERE.chain(randomMap), fc.infiniteStream(fc.nat()), async (map, stream) => {
        const blocks = sortedBlocks(map, 3).map((block) => ({ block, at: stream.next().value }));
        const shuffled = blocks.sort((a, b) => a.at - b.at).map(({ block }) => block);
        expectHoldsAll(await bothWays(write('map.osm.pbf', pbfFile(shuffled))));
      }),
      { numRuns: 12 },
    );
  });

  it('of OSM XML in any order, and of an answer of Overpass', async () => {
    await fc.assert(
      fc.asyncProperty(SOMEWHERE.chain(randomMap), fc.infiniteStream(fc.nat()), async (map, stream) => {
        expectHoldsAll(
          await bothWays(
            write(
              'map.osm',
              xmlOf(map, () => stream.next().value),
            ),
          ),
        );
        expectHoldsAll(await bothWays(write('map.json', jsonOf(map))));
      }),
      { numRuns: 5 },
    );
  });

  it('of the sample, as the plain way lays it out, and of all formats the same', async () => {
    const sample = join(import.meta.dirname, '../../../../../sample-routes/district.osm');
    const sorted = await bothWays(`${sample}.pbf`);
    expectHoldsAll(sorted);
    const general = await bothWays(`${sample}.gz`);
    expectHoldsAll(general);
    expect(general.meta).toMatchObject({ roads: sorted.meta.roads, nodes: sorted.meta.nodes });
    const wide = [...sorted.ours].filter(([key]) => key.startsWith(`${LAYER.wide}/`));
    for (const [key, tile] of wide) expect([...general.ours.get(key)!.ways]).toEqual([...tile.ways]);
  });
});
