import { localFrame } from '../../earth/frame.ts';
import type { Point } from '../../earth/point.ts';
import { awayFrom, crossing } from '../../earth/segment.ts';
import { wayKind } from '../../roads/keep.ts';
import { WAY_KIND } from '../../roads/roads.ts';
import type { Element } from './element.ts';
import type { Piece } from './piece.ts';

/** Roads that touch the strip with a corner of theirs only may lie a little outside it. */
const MARGIN_M = 50;

/**
 * Whether an answer holds a road or a ferry where the piece was asked for. One that does not is suspect: the server
 * may hold another part of the Earth, or take latitude for longitude. That it holds more than was asked is nothing.
 */
export function holdsRoad(elements: readonly Element[], piece: Piece): boolean {
  const near = nearness(piece);
  const places = new Map<number, Point>();
  for (const element of elements)
    if (element.type === 'node') places.set(element.id, near.toXY(element.lat, element.lon));
  return elements.some((element) => {
    if (element.type !== 'way' || !isDriven(element.tags ?? {})) return false;
    let before: Point | undefined;
    for (const [i, id] of element.nodes.entries()) {
      const given = element.geometry?.[i];
      const here = places.get(id) ?? (given ? near.toXY(given.lat, given.lon) : undefined);
      if (here && (near.has(here) || (before && near.meets(before, here)))) return true;
      before = here;
    }
    return false;
  });
}

function isDriven(tags: Readonly<Record<string, string>>): boolean {
  const kind = wayKind(tags);
  return kind === WAY_KIND.road || kind === WAY_KIND.ferry;
}

interface Near {
  toXY(lat: number, lon: number): Point;
  has(place: Point): boolean;
  meets(a: Point, b: Point): boolean;
}

/** In a flat frame about the piece's middle, which is some tens of kilometres across. */
function nearness({ box, along }: Piece): Near {
  const frame = localFrame((box.south + box.north) / 2, (box.west + box.east) / 2);
  const low = frame.toXY(box.south, box.west);
  const high = frame.toXY(box.north, box.east);
  const inBox = ({ x, y }: Point) => x >= low.x && x <= high.x && y >= low.y && y <= high.y;
  if (!along) {
    const corners = [low, { x: high.x, y: low.y }, high, { x: low.x, y: high.y }, low];
    return { toXY: frame.toXY, has: inBox, meets: (a, b) => crosses(corners, a, b) };
  }
  const line = along.places.map(({ lat, lon }) => frame.toXY(lat, lon));
  const reachM = along.radiusM + MARGIN_M;
  const has = (place: Point) =>
    inBox(place) && line.some((to, i) => i > 0 && awayFrom(place, line[i - 1]!, to) <= reachM);
  return { toXY: frame.toXY, has, meets: (a, b) => crosses(line, a, b) };
}

function crosses(line: readonly Point[], a: Point, b: Point): boolean {
  return line.some((to, i) => i > 0 && crossing(line[i - 1]!, to, a, b) !== undefined);
}
