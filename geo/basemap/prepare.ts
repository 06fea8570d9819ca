import Flatbush from 'flatbush';
import { mercatorX, mercatorY } from '../earth/mercator.ts';
import { largest, smallest } from '../lists.ts';
import type { Roads, Tags } from '../roads/roads.ts';
import { drawKind, MIN_ZOOM } from './draw-kind.ts';
import type { DrawKind } from './features.ts';
import { isClosed, joinLines } from './join-lines.ts';
import { type NameLine, nameLines } from './name-lines.ts';
import { type Place, placesOf } from './places.ts';

/** One line or ring to draw. */
export interface Drawn {
  readonly kind: DrawKind;
  readonly level: number;
  readonly area: boolean;
  /** node places */
  readonly refs: Uint32Array;
  readonly tags: Tags;
  /** made when first drawn (weigh-line) */
  weight?: Float32Array;
}

/** Things with their boxes on the unit square. */
export interface Shelf<T> {
  readonly things: readonly T[];
  readonly tree: Flatbush | undefined;
}

/** A map made ready to be cut into tiles. */
export interface BaseMap {
  /** nodes on the unit square (mercator) */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** where every coastline closes: what lies outside them is sea, as far as this box; beyond it nobody knows */
  readonly sea: Box | undefined;
  /** from the first zoom at which they are drawn on */
  readonly shelves: readonly { readonly minZoom: number; readonly shelf: Shelf<Drawn> }[];
  readonly names: Shelf<NameLine>;
  readonly places: Shelf<Place>;
}

/** Of a cutting nobody knows whether its closed coasts are islands in a sea or lie beside a mainland whose coast is elsewhere. */
export type MapExtent = 'whole' | 'cutting';

/** Projects a map, finds what is drawn of it, joins the edges of areas, and indexes all by place and first zoom. */
export function prepareBaseMap(
  roads: Roads,
  { extent = 'whole' }: { readonly extent?: MapExtent } = {},
): BaseMap {
  const { nodes } = roads;
  const x = Float64Array.from(nodes.lon, mercatorX);
  const y = Float64Array.from(nodes.lat, mercatorY);
  const drawn = drawnOf(roads);
  const coast = drawn.filter(({ kind }) => kind === 'coastline');
  const sea = extent === 'whole' && coast.length > 0 && coast.every(({ refs }) => isClosed(refs));
  if (sea) for (const { refs, tags } of coast) drawn.push({ kind: 'land', level: 0, area: true, refs, tags });
  const byZoom = new Map<number, Drawn[]>();
  for (const one of drawn) {
    const minZoom = MIN_ZOOM[one.kind];
    const there = byZoom.get(minZoom);
    if (there) there.push(one);
    else byZoom.set(minZoom, [one]);
  }
  const boxOf = (refs: Uint32Array) => boxAround(refs, x, y);
  return {
    x,
    y,
    sea: sea ? seaAbout(coast.map(({ refs }) => boxAround(refs, x, y))) : undefined,
    shelves: [...byZoom]
      .sort(([a], [b]) => a - b)
      .map(([minZoom, things]) => ({ minZoom, shelf: shelve(things, ({ refs }) => boxOf(refs)) })),
    names: shelve(nameLines(drawn), ({ refs }) => boxOf(refs)),
    places: shelve(placesOf(nodes, drawn, x, y), (place) => [place.x, place.y, place.x, place.y]),
  };
}

function drawnOf({ ways }: Roads): Drawn[] {
  const drawn: Drawn[] = [];
  // the edges of one area share its tags, and so do the pieces of a coast
  const open = new Map<Tags, { readonly kind: DrawKind; readonly lines: Uint32Array[] }>();
  const coast: Uint32Array[] = [];
  for (let way = 0; way < ways.count; way++) {
    const tags = ways.tags[way] as Tags;
    const refs = ways.refs.subarray(ways.start[way], ways.start[way + 1]);
    const closed = isClosed(refs);
    const drawing = drawKind({ tags, kind: ways.kind[way]!, closed });
    if (drawing === undefined || refs.length < 2) continue;
    if (drawing.kind === 'coastline') coast.push(refs);
    else if (!drawing.area || closed) drawn.push({ ...drawing, refs, tags });
    else {
      const there = open.get(tags);
      if (there) there.lines.push(refs);
      else open.set(tags, { kind: drawing.kind, lines: [refs] });
    }
  }
  // an edge that does not close was cut off with the extract: nobody knows which side of it is inside
  for (const [tags, { kind, lines }] of open)
    for (const refs of joinLines(lines))
      if (isClosed(refs)) drawn.push({ kind, level: 0, area: true, refs, tags });
  for (const refs of joinLines(coast))
    drawn.push({ kind: 'coastline', level: 0, area: false, refs, tags: COAST });
  return drawn;
}

const COAST: Tags = { natural: 'coastline' };

/** West, north, east, south on the unit square. */
type Box = readonly [number, number, number, number];

/** The coasts and as much again on every side: a drive on another continent is not drawn at sea. */
function seaAbout(coasts: readonly Box[]): Box {
  const west = smallest(coasts.map((box) => box[0]));
  const north = smallest(coasts.map((box) => box[1]));
  const east = largest(coasts.map((box) => box[2]));
  const south = largest(coasts.map((box) => box[3]));
  const more = Math.max(east - west, south - north);
  return [west - more, north - more, east + more, south + more];
}

function shelve<T>(things: readonly T[], boxOf: (thing: T) => Box): Shelf<T> {
  if (things.length === 0) return { things, tree: undefined };
  const tree = new Flatbush(things.length, 16, Float64Array);
  for (const thing of things) tree.add(...boxOf(thing));
  tree.finish();
  return { things, tree };
}

function boxAround(refs: Uint32Array, x: Float64Array, y: Float64Array): Box {
  let [west, north, east, south] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ref of refs) {
    const px = x[ref]!;
    const py = y[ref]!;
    if (px < west) west = px;
    if (px > east) east = px;
    if (py < north) north = py;
    if (py > south) south = py;
  }
  return [west, north, east, south];
}

/** What of a shelf meets a box, in the shelf's own order, so that the same box always answers the same. */
export function onShelf<T>({ things, tree }: Shelf<T>, [west, north, east, south]: Box): T[] {
  if (tree === undefined) return [];
  return tree
    .search(west, north, east, south)
    .sort((a, b) => a - b)
    .map((i) => things[i] as T);
}
