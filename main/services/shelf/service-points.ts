import type { DrawnRoute } from '../../../geo/roads/discs.ts';
import { corridorMask } from '../../../geo/roads/mask.ts';
import { Refusal } from '../../../geo/roads/refusal.ts';
import type { ServicePoint } from '../../../geo/services/point.ts';
import { middleOf, pointOf } from '../../../geo/services/points-in.ts';
import type { BlockContent } from '../../../geo/shelf/block.ts';
import { LAYER_ZOOM } from '../../../geo/shelf/layers.ts';
import { decodeTags } from '../../../geo/shelf/tag-bytes.ts';
import { numbersIn, rangeOfBox } from '../../../geo/shelf/tiles.ts';
import { codeOf } from '../files/system-error.ts';
import type { OpenShelf } from './open-shelf.ts';
import type { OpenPart } from './read-part.ts';

/** Service points found on the shelf about a drive, and whether a part of it could not be read. */
interface PointsFound {
  readonly points: readonly ServicePoint[];
  readonly sound: boolean;
}

/** Places to fill up, to empty tanks and to stay, of every map on the shelf, so far beside a drive and some way beyond. */
export function servicePointsAlong(shelf: OpenShelf, route: DrawnRoute, reachM: number): PointsFound {
  const tiles = new Set<number>();
  for (const box of corridorMask(route, { reachM }).boxes('reach'))
    for (const tile of numbersIn(rangeOfBox(box, LAYER_ZOOM.service), LAYER_ZOOM.service)) tiles.add(tile);
  const points = new Map<string, ServicePoint>();
  let sound = true;
  for (const { part } of shelf.parts)
    for (const tile of tiles) {
      const block = tryTile(part, tile);
      if (block === 'damaged') sound = false;
      else if (block !== undefined)
        for (const point of pointsOf(block)) points.set(`${point.osm.type}${point.osm.id}`, point);
    }
  return { points: [...points.values()], sound };
}

function* pointsOf({ sets, nodes, ways }: BlockContent): Generator<ServicePoint> {
  for (const [i, node] of nodes.tagged.node.entries()) {
    const at = { lat: nodes.lat[node]!, lon: nodes.lon[node]! };
    const tags = decodeTags(sets.at(nodes.tagged.set[i]!)!);
    const point = pointOf({ type: 'node', id: nodes.id[node]! }, at, tags);
    if (point !== undefined && !Number.isNaN(at.lat)) yield point;
  }
  for (let way = 0; way < ways.count; way++) {
    const refs = ways.refs.subarray(ways.start[way]!, ways.start[way + 1]!);
    const placed = refs.filter((ref) => !Number.isNaN(nodes.lat[ref]!));
    const tags = decodeTags(sets.at(ways.set[way]!)!);
    const point = pointOf({ type: 'way', id: ways.id[way]! }, middleOf(placed, nodes), tags);
    if (point !== undefined && placed.length > 0) yield point;
  }
}

function tryTile(part: OpenPart, tile: number): BlockContent | undefined | 'damaged' {
  try {
    return part.tile('service', tile);
  } catch (thrown) {
    if (thrown instanceof Refusal || codeOf(thrown) !== undefined) return 'damaged';
    throw thrown;
  }
}
