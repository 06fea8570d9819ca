import { mix } from '../earth/between.ts';
import { distanceM } from '../earth/sphere.ts';
import { wayAlong } from '../graph/road-graph.ts';
import { mappedOn } from '../roads/mapped-on.ts';
import { type NearSegment, type Roads, WAY_KIND } from '../roads/roads.ts';
import type { NoteFields } from './note.ts';
import { isNamed, isSameRoad, seenOn } from './same-road.ts';

/** A note follows its place so far over a new map, and holds so far either way on its road. Metres. */
export const HOLDS_M = 25;
/** What a note is about is looked for so far, to tell that it has moved. Metres. */
const LOOK_FOR_M = 200;

/** A place on a way: metres along it from its first ref. */
export interface OnWay {
  /** index into Roads.ways */
  readonly way: number;
  readonly alongM: number;
}

/** Why a note can no longer be placed. */
export type Lost =
  /** what it is about lies so far from where it was */
  | { readonly why: 'moved'; readonly awayM: number }
  | { readonly why: 'no road' }
  /** roads are there, and none is the one it was made on */
  | { readonly why: 'other road' };

export type Placed =
  | { readonly ok: true; readonly on: readonly [OnWay, ...OnWay[]] }
  | { readonly ok: false; readonly lost: Lost };

type Note = Pick<NoteFields, 'at' | 'osm' | 'road'>;

/**
 * The road of a note on this map: the OSM object it was made on, where that still lies within 25 m; else the road
 * there of the same name or number; else, for one without either, the nearest of its class.
 */
export function placeNote(note: Note, roads: Roads): Placed {
  const near = roadsNear(roads, note.at, HOLDS_M);
  if (note.osm?.type === 'node') {
    const node = nodeNear(note.osm.id, note, roads);
    if (node !== undefined) return node.awayM <= HOLDS_M ? placedAtNode(note, roads, node) : lost(node);
  }
  const same = near.find(({ way }) => note.osm?.type === 'way' && roads.ways.id[way] === note.osm.id);
  const found = same ?? near.find(({ way }) => mayBeOn(note, roads, way));
  if (found !== undefined) return { ok: true, on: [onWay(roads, found)] };
  const moved = note.osm?.type === 'way' ? wayNear(note.osm.id, note, roads) : undefined;
  if (moved !== undefined) return lost(moved);
  return { ok: false, lost: { why: near.length === 0 ? 'no road' : 'other road' } };
}

/** What to store with a note made at a place of this map: the nearest road there; undefined where there is none. */
export function roadAt(
  at: NoteFields['at'],
  roads: Roads,
): Required<Pick<NoteFields, 'osm' | 'road'>> | undefined {
  const [nearest] = roadsNear(roads, at, HOLDS_M);
  if (nearest === undefined) return undefined;
  const { way } = nearest;
  return { osm: { type: 'way', id: roads.ways.id[way]! }, road: seenOn(mappedOn(roads, way)) };
}

/** Segments of roads within reach, the nearest first; of equals the first in the map. */
function roadsNear(roads: Roads, { lat, lon }: NoteFields['at'], reachM: number): NearSegment[] {
  return roads.index
    .near(lat, lon, reachM)
    .filter(({ way }) => roads.ways.kind[way] === WAY_KIND.road)
    .sort((a, b) => a.distanceM - b.distanceM || a.way - b.way || a.seg - b.seg);
}

function onWay(roads: Roads, { way, seg, t }: NearSegment): OnWay {
  const along = wayAlong(roads, way);
  return { way, alongM: mix(along[seg]!, along[seg + 1]!, t) };
}

function mayBeOn({ road }: Note, roads: Roads, way: number): boolean {
  const tags = mappedOn(roads, way);
  if (road === undefined) return true;
  return isNamed(road)
    ? isSameRoad(road, seenOn(tags))
    : road.class === undefined || road.class === tags['highway'];
}

function lost({ awayM }: { readonly awayM: number }): Placed {
  return { ok: false, lost: { why: 'moved', awayM } };
}

function wayNear(id: number, { at }: Note, roads: Roads): { readonly awayM: number } | undefined {
  const found = roadsNear(roads, at, LOOK_FOR_M).find(({ way }) => roads.ways.id[way] === id);
  return found && { awayM: found.distanceM };
}

/** A point of a road, with every place of it on the ways about. */
interface NodeFound {
  readonly awayM: number;
  readonly on: readonly OnWay[];
}

function nodeNear(id: number, { at }: Note, roads: Roads): NodeFound | undefined {
  const { nodes, ways } = roads;
  const on = new Map<string, OnWay>();
  let awayM: number | undefined;
  for (const { way, seg } of roadsNear(roads, at, LOOK_FOR_M))
    for (const ref of [seg, seg + 1]) {
      const node = ways.refs[ways.start[way]! + ref]!;
      if (nodes.id[node] !== id) continue;
      awayM = distanceM(at.lat, at.lon, nodes.lat[node]!, nodes.lon[node]!);
      on.set(`${way} ${ref}`, { way, alongM: wayAlong(roads, way)[ref]! });
    }
  return awayM === undefined ? undefined : { awayM, on: [...on.values()] };
}

/** A point where several roads meet counts on the one that the note was made on. */
function placedAtNode(note: Note, roads: Roads, { on }: NodeFound): Placed {
  const ours = on.filter(({ way }) => mayBeOn(note, roads, way));
  const [first, ...rest] = ours.length > 0 ? ours : on;
  return first === undefined ? { ok: false, lost: { why: 'no road' } } : { ok: true, on: [first, ...rest] };
}
