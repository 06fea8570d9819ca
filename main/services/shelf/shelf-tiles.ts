import { MIN_ZOOM } from '../../../geo/basemap/draw-kind.ts';
import type { TileFeatures } from '../../../geo/basemap/features.ts';
import { type BaseMap, prepareBaseMap } from '../../../geo/basemap/prepare.ts';
import { tileFeatures } from '../../../geo/basemap/tile-features.ts';
import { fromMercator } from '../../../geo/earth/mercator.ts';
import { assembleRoads } from '../../../geo/roads/assemble.ts';
import { withLocalIds } from '../../../geo/roads/local-ids.ts';
import { Refusal } from '../../../geo/roads/refusal.ts';
import { RoadCollector } from '../../../geo/roads/road-collector.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import type { BlockContent } from '../../../geo/shelf/block.ts';
import { LAYER_ZOOM, type TiledLayer } from '../../../geo/shelf/layers.ts';
import { createReplay } from '../../../geo/shelf/replay.ts';
import { numbersIn, rangeOfBox } from '../../../geo/shelf/tiles.ts';
import { withoutWays } from '../../../geo/shelf/without-ways.ts';
import { codeOf } from '../files/system-error.ts';
import type { OpenShelf } from './open-shelf.ts';
import type { OpenPart } from './read-part.ts';

/** Prepared pieces kept: those around three full views of a large screen. */
const PREPARED_MAX = 40;
/** Beyond the tile's edge, as a share of its width: wide lines reach in from there. */
const MARGIN = 0.08;

/** From which zoom (of 512-pixel tiles) the base map is drawn from which layers; thinned ones for those zoomed out. */
const DRAWN_FROM: readonly { readonly from: number; readonly layers: readonly TiledLayer[] }[] = [
  { from: 11, layers: ['wide', 'near', 'far'] },
  { from: 8, layers: ['draw8'] },
  { from: 0, layers: ['draw5'] },
];

/**
 * Cuts base map tiles out of the shelf: of each only the shelf's tiles under it are read. What is damaged is not
 * drawn; a check says so.
 */
export function shelfTileCutter(shelf: OpenShelf): (z: number, x: number, y: number) => TileFeatures {
  const prepared = new Map<string, BaseMap>();
  return (z, x, y) => {
    const wanted = tilesUnder(z, x, y);
    const buildings = z > NO_BUILDINGS_TO;
    const key = JSON.stringify([buildings, wanted]);
    const map = prepared.get(key) ?? prepareTiles(shelf, wanted, { buildings });
    prepared.delete(key);
    prepared.set(key, map);
    for (const oldest of prepared.keys()) {
      if (prepared.size <= PREPARED_MAX) break;
      prepared.delete(oldest);
    }
    return tileFeatures(map, z, x, y);
  };
}

/** Up to which zoom (of 512-pixel tiles) no building is drawn: most of what a town's tiles hold. */
const NO_BUILDINGS_TO = MIN_ZOOM.building - 2;

type Wanted = readonly { readonly layer: TiledLayer; readonly tiles: readonly number[] }[];

function tilesUnder(z: number, x: number, y: number): Wanted {
  const side = 2 ** -z;
  const northWest = fromMercator((x - MARGIN) * side, Math.max(0, (y - MARGIN) * side));
  const southEast = fromMercator((x + 1 + MARGIN) * side, Math.min(1, (y + 1 + MARGIN) * side));
  const box = {
    south: southEast.lat,
    north: northWest.lat,
    west: northWest.lon,
    east: southEast.lon,
  };
  const layers = DRAWN_FROM.find(({ from }) => z >= from)?.layers ?? [];
  return layers.map((layer) => {
    const zoom = LAYER_ZOOM[layer];
    return { layer, tiles: numbersIn(rangeOfBox(box, zoom), zoom) };
  });
}

function prepareTiles(
  shelf: OpenShelf,
  wanted: Wanted,
  { buildings }: { readonly buildings: boolean },
): BaseMap {
  const collector = new RoadCollector();
  const told = shelf.parts.flatMap(({ part }) => {
    const blocks = wanted.flatMap(({ layer, tiles }) =>
      tiles.flatMap((tile) => soundTile(part, layer, tile)),
    );
    if (blocks.length === 0) return [];
    return [createReplay(buildings ? blocks : blocks.map((block) => withoutWays(block, isBuilding)))];
  });
  for (const [i, tell] of told.entries()) tell(withLocalIds(collector.all, i));
  const roads = assembleRoads(collector, [], { notes: [], incomplete: [] });
  return prepareBaseMap(roads, { extent: 'cutting' });
}

function isBuilding(tags: Tags): boolean {
  return tags['building'] !== undefined && tags['landuse'] === undefined;
}

function soundTile(part: OpenPart, layer: TiledLayer, tile: number): BlockContent[] {
  try {
    const block = part.tile(layer, tile);
    return block === undefined ? [] : [block];
  } catch (thrown) {
    if (thrown instanceof Refusal || codeOf(thrown) !== undefined) return [];
    throw thrown;
  }
}
