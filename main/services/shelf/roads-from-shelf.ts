import { given } from '../../../geo/given.ts';
import { assembleRoads } from '../../../geo/roads/assemble.ts';
import type { DrawnRoute, Reach } from '../../../geo/roads/discs.ts';
import { withLocalIds } from '../../../geo/roads/local-ids.ts';
import { corridorMask } from '../../../geo/roads/mask.ts';
import { Refusal } from '../../../geo/roads/refusal.ts';
import { RoadCollector } from '../../../geo/roads/road-collector.ts';
import type { MapSource, Roads } from '../../../geo/roads/roads.ts';
import type { MapSink } from '../../../geo/roads/sink.ts';
import type { BlockContent } from '../../../geo/shelf/block.ts';
import type { TiledLayer } from '../../../geo/shelf/layers.ts';
import { neededOf } from '../../../geo/shelf/needed.ts';
import type { PartMeta } from '../../../geo/shelf/part-meta.ts';
import { createReplay } from '../../../geo/shelf/replay.ts';
import { type TilesAlong, tilesAlong } from '../../../geo/shelf/tiles-along.ts';
import { codeOf } from '../files/system-error.ts';
import type { OpenShelf } from './open-shelf.ts';
import type { OpenPart } from './read-part.ts';
import { sayDamaged, sayForbidden } from './say-lacking.ts';

/** What the shelf knows along a drive. */
export interface ShelfRoads {
  readonly roads: Roads;
  /** the maps that hold something within reach of the drive, in the order used */
  readonly used: readonly { readonly map: string; readonly meta: PartMeta }[];
  /** names of maps of which something was left out as damaged */
  readonly damaged: readonly string[];
}

/** Lets other work in and throws when the work was given up. */
export type Pause = () => Promise<void>;

/**
 * Reads what lies within reach of a drive from every map that has something there, as reading their files would:
 * the tiles are told to the same collector. What is damaged is left out and said.
 */
export async function roadsFromShelf(
  shelf: OpenShelf,
  route: DrawnRoute,
  pause: Pause,
  reach: Reach = {},
): Promise<ShelfRoads> {
  const mask = corridorMask(route, reach);
  const damaged = new Set<string>();
  const wanted = tilesAlong(mask);
  const used: (ShelfRoads['used'][number] & { notes: readonly string[]; blocks: BlockContent[] })[] = [];
  for (const { map, part, notes } of shelf.parts) {
    const { blocks, sound } = await readTiles(part, wanted, pause);
    if (!sound) damaged.add(map);
    if (blocks.length > 0) used.push({ map, meta: part.meta, notes, blocks });
  }
  // in how much maps differ that hold the same is told of all they hold
  const needed =
    used.length > 1
      ? []
      : used.map(({ blocks }) => neededOf(blocks, mask, reach.reachM === undefined ? 'close' : 'reach'));
  const mostNodes = used.flatMap(({ blocks }, i) =>
    blocks.map(({ nodes }, tile) => needed[i]?.[tile]?.nodeCount ?? nodes.count),
  );
  const replays = used.map(({ blocks }, i) => createReplay(blocks, needed[i]));
  const tellAll = async (sink: MapSink) => {
    for (const [i, tell] of replays.entries()) {
      await pause();
      tell(withLocalIds(sink, i));
    }
  };
  const collector = new RoadCollector(
    mask,
    mostNodes.reduce((sum, count) => sum + count, 1),
  );
  await tellAll(collector.all);
  if (collector.needsWaysAgain()) await tellAll(collector.waysAgain());
  const lacking = collector.missingNodes();
  if (lacking) await tellAll(lacking);
  await pause();
  const lost = [...damaged].map(sayDamaged);
  const shut = shelf.damaged.filter((map) => !damaged.has(map)).map(sayDamaged);
  const forbidden = shelf.forbidden.map(sayForbidden);
  const notes = (of: (meta: PartMeta) => readonly string[]) =>
    used.flatMap(({ meta }) => of(meta).map((note) => `${meta.source.name}: ${note}`));
  const roads = assembleRoads(
    collector,
    used.map(({ meta }) => sourceOf(meta)),
    {
      notes: [
        ...notes((meta) => meta.notes),
        ...used.flatMap((each) => each.notes),
        ...lost,
        ...shut,
        ...forbidden,
      ],
      incomplete: [...notes((meta) => meta.incomplete), ...lost],
    },
  );
  return { roads, used, damaged: [...new Set([...damaged, ...shelf.damaged])] };
}

function sourceOf({ source, dataDate }: PartMeta): MapSource {
  return { name: source.name, sha256: source.sha256, ...given({ dataDate }) };
}

/** @returns `sound` false where something of these tiles could not be read */
async function readTiles(
  part: OpenPart,
  wanted: TilesAlong,
  pause: Pause,
): Promise<{ blocks: BlockContent[]; sound: boolean }> {
  const blocks: BlockContent[] = [];
  let sound = true;
  const layers: readonly [TiledLayer, readonly number[]][] = [
    ['wide', wanted.wide],
    ['near', wanted.near],
    ['far', wanted.far],
  ];
  for (const [layer, tiles] of layers)
    for (const tile of tiles) {
      const block = tryTile(part, layer, tile);
      if (block === 'damaged') sound = false;
      else if (block !== undefined) blocks.push(block);
      await pause();
    }
  return { blocks, sound };
}

function tryTile(part: OpenPart, layer: TiledLayer, tile: number): BlockContent | undefined | 'damaged' {
  try {
    return part.tile(layer, tile);
  } catch (thrown) {
    if (thrown instanceof Refusal || codeOf(thrown) !== undefined) return 'damaged';
    throw thrown;
  }
}
