import { toDeg } from '../earth/angles.ts';
import { mix, shareOf } from '../earth/between.ts';
import { spanHolding } from '../earth/bisect.ts';
import { headingRad, type Point } from '../earth/point.ts';
import { lastOrZero } from '../lists.ts';
import { TILE_PX, TILE_UNITS, type TileLabel } from './features.ts';
import type { NameLine } from './name-lines.ts';
import { type BaseMap, onShelf } from './prepare.ts';

/** How far apart one name is written again, pixels. */
const AGAIN_PX = 420;
/** A guess at the width of a letter of the small text, pixels; who draws knows better. */
const LETTER_PX = 7;
/** A name is written straight: its stretch of road may be this much longer than its chord. */
const STRAIGHT = 1.02;
const TRY_PX = [0, -40, 40, -80, 80, -130, 130];

/** Texts whose middle lies in the tile, so that every text belongs to one tile. */
export function tileLabels(map: BaseMap, z: number, x: number, y: number): TileLabel[] {
  const side = 2 ** -z;
  const west = x * side;
  const north = y * side;
  const zoom = z + 1;
  const labels: TileLabel[] = [];
  const add = (
    { say, kind, rank }: Pick<TileLabel, 'say' | 'kind' | 'rank'>,
    px: number,
    py: number,
    angleDeg: number,
  ) => {
    const inX = (px - west) / side;
    const inY = (py - north) / side;
    if (inX < 0 || inX >= 1 || inY < 0 || inY >= 1) return;
    labels.push({
      say,
      kind,
      rank,
      x: Math.round(inX * TILE_UNITS),
      y: Math.round(inY * TILE_UNITS),
      angleDeg,
    });
  };
  const box = [west, north, west + side, north + side] as const;
  for (const place of onShelf(map.places, box)) {
    if (zoom < place.minZoom) continue;
    if (place.width !== undefined && (place.width / side) * TILE_PX < place.say.length * LETTER_PX) continue;
    add(place, place.x, place.y, 0);
  }
  for (const line of onShelf(map.names, box)) {
    if (zoom < line.minZoom) continue;
    for (const { px, py, angleDeg } of anchors(line, map, side, box))
      add(line, px, py, line.kind === 'ref' ? 0 : angleDeg);
  }
  return labels.sort((a, b) => a.rank - b.rank);
}

interface Anchor {
  readonly px: number;
  readonly py: number;
  readonly angleDeg: number;
}

/** Where along a line its name is written, near the box only: the same places whichever tile asks. */
function anchors(
  line: NameLine,
  map: BaseMap,
  side: number,
  box: readonly [number, number, number, number],
): Anchor[] {
  line.along ??= lengthsAlong(line.refs, map);
  const length = lastOrZero(line.along);
  const px = side / TILE_PX;
  const upright = line.kind === 'ref';
  const needed = upright ? 40 * px : (line.say.length * LETTER_PX + 12) * px;
  if (length < needed) return [];
  const count = Math.max(1, Math.floor(length / (AGAIN_PX * px)));
  const reach = AGAIN_PX * px;
  const found: Anchor[] = [];
  for (let i = 0; i < count; i++) {
    const middle = ((i + 0.5) * length) / count;
    const near = placeAt(line, map, middle);
    if (
      near.x < box[0] - reach ||
      near.x > box[2] + reach ||
      near.y < box[1] - reach ||
      near.y > box[3] + reach
    )
      continue;
    if (upright) {
      found.push({ px: near.x, py: near.y, angleDeg: 0 });
      continue;
    }
    const anchor = straightNear(line, map, { middle, needed, length, px });
    if (anchor) found.push(anchor);
  }
  return found;
}

/** Where a text that needs so much of a line's length is wanted. Unit square; `px` is the size of a pixel. */
interface Sought {
  readonly middle: number;
  readonly needed: number;
  readonly length: number;
  readonly px: number;
}

function straightNear(
  line: NameLine,
  map: BaseMap,
  { middle, needed, length, px }: Sought,
): Anchor | undefined {
  for (const off of TRY_PX) {
    const from = middle + off * px - needed / 2;
    if (from < 0 || from + needed > length) continue;
    const a = placeAt(line, map, from);
    const b = placeAt(line, map, from + needed);
    const chord = Math.hypot(b.x - a.x, b.y - a.y);
    if (chord * STRAIGHT < needed) continue;
    const centre = placeAt(line, map, from + needed / 2);
    // read from left to right
    const degrees = toDeg(headingRad(a, b));
    const level = degrees > 90 ? degrees - 180 : degrees < -90 ? degrees + 180 : degrees;
    return {
      px: (centre.x * 2 + (a.x + b.x) / 2) / 3,
      py: (centre.y * 2 + (a.y + b.y) / 2) / 3,
      angleDeg: Math.round(level),
    };
  }
  return undefined;
}

function lengthsAlong(refs: Uint32Array, { x, y }: BaseMap): Float64Array {
  const along = new Float64Array(refs.length);
  for (let i = 1; i < refs.length; i++) {
    const a = refs[i - 1]!;
    const b = refs[i]!;
    along[i] = along[i - 1]! + Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!);
  }
  return along;
}

function placeAt({ refs, along }: NameLine, { x, y }: BaseMap, at: number): Point {
  const lengths = along!;
  const low = spanHolding(lengths, at);
  const high = Math.min(low + 1, refs.length - 1);
  const t = shareOf(at, lengths[low]!, lengths[high]!);
  const a = refs[low]!;
  const b = refs[high]!;
  return { x: mix(x[a]!, x[b]!, t), y: mix(y[a]!, y[b]!, t) };
}
