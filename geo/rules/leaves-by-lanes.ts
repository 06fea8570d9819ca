import { bearingDeg } from '../earth/sphere.ts';
import { mappedOn } from '../roads/mapped-on.ts';
import type { Roads } from '../roads/roads.ts';
import type { Driven } from '../tags/driven.ts';
import type { LaneLimit } from '../tags/lanes.ts';
import { onewayFor } from '../tags/oneway.ts';
import { builtFor } from '../tags/road-class.ts';
import { drivenWays, type Place } from './places.ts';
import type { RuleInput } from './rule.ts';

/** A branch less than this off the road's line competes for being the way straight on. Degrees. */
const FORWARD_DEG = 60;
/** A turn of more than this is one whatever else branches off there. Degrees. */
const TURN_DEG = 45;
/** Radius that finds the roads at a node and no others that matter. Metres. */
const AT_NODE_M = 0.5;
/** Ways further apart do not meet. Metres. */
const MEETING_M = 0.5;

/**
 * Whether the drive leaves a road by lanes that a tag keeps it from, though others are free: at the end of the ways that
 * carry the tag it turns off to their side, or where `turn:lanes` tells, no free lane leads its way.
 */
export function leavesByLanes(
  input: RuleInput,
  place: Place,
  tag: { readonly key: string; readonly text: string },
  { lanes, boundAt }: LaneLimit,
): boolean {
  if (place.type !== 'way') return false;
  const [last, next] = endOfTagged(input, place, tag);
  if (last === undefined || next === undefined) return false;
  const side = sideTaken(input.roads, last, next);
  if (side === undefined) return false;
  const leading = leadingLanes(last, side, lanes.length);
  return leading.length > 0 && leading.every((lane) => boundAt.includes(lane));
}

type Side = 'left' | 'through' | 'right';

/** The last of the driven ways in a row that carry the tag, and the one driven after it. */
function endOfTagged(
  { drive, roads }: RuleInput,
  place: Place,
  { key, text }: { readonly key: string; readonly text: string },
): [Place | undefined, Place | undefined] {
  const places = drivenWays(drive, roads);
  const first = places.indexOf(place);
  for (let i = Math.max(0, first); first >= 0 && i < places.length; i++) {
    const [here, next] = [places[i], places[i + 1]];
    if (here === undefined || next === undefined || next.fromM - here.toM > MEETING_M)
      return [here, undefined];
    if (next.tags[key] !== text) return [here, next];
  }
  return [undefined, undefined];
}

/** Which way the drive takes where one way ends and the next begins; undefined: no other road branches off there. */
function sideTaken(roads: Roads, last: Place, next: Place): Side | undefined {
  const at = endNode(roads, last);
  const from = nodeBeside(roads, last.index, at, last.forward ? -1 : 1);
  const to = nodeBeside(roads, next.index, at, next.forward ? 1 : -1);
  if (from === undefined || to === undefined) return undefined;
  const heading = bearing(roads, from, at);
  const angleTo = (node: number) => signedDeg(heading, bearing(roads, at, node));
  const others = branches(roads, at)
    .filter((node) => node !== from && node !== to)
    .map(angleTo);
  if (others.length === 0) return undefined;
  const taken = angleTo(to);
  if (Math.abs(taken) > TURN_DEG) return taken > 0 ? 'right' : 'left';
  const straighter = others.find(
    (angle) => Math.abs(angle) < FORWARD_DEG && Math.abs(angle) < Math.abs(taken),
  );
  if (straighter === undefined) return 'through';
  return taken > straighter ? 'right' : 'left';
}

function endNode(roads: Roads, { index, forward }: Place): number {
  const { start, refs } = roads.ways;
  return refs[forward ? start[index + 1]! - 1 : start[index]!]!;
}

/** The node of a way next to one of its own, in drawn order or against it. */
function nodeBeside(roads: Roads, way: number, node: number, step: 1 | -1): number | undefined {
  const { start, refs } = roads.ways;
  for (let i = start[way]!; i < start[way + 1]!; i++) {
    const j = i + step;
    if (refs[i] === node && j >= start[way]! && j < start[way + 1]!) return refs[j]!;
  }
  return undefined;
}

/** The next nodes along every road that may be driven away from a node. */
function branches(roads: Roads, node: number): number[] {
  const { lat, lon } = roads.nodes;
  const found = new Set<number>();
  for (const { way, seg } of roads.index.near(lat[node]!, lon[node]!, AT_NODE_M)) {
    const at = roads.ways.start[way]! + seg;
    const [a, b] = [roads.ways.refs[at]!, roads.ways.refs[at + 1]!];
    const tags = mappedOn(roads, way);
    if (a === node && isOpen({ tags, forward: true })) found.add(b);
    else if (b === node && isOpen({ tags, forward: false })) found.add(a);
  }
  return [...found];
}

function isOpen(driven: Driven): boolean {
  return builtFor(driven.tags).kind !== 'closed' && onewayFor(driven).allowed !== 'no';
}

function bearing({ nodes: { lat, lon } }: Roads, from: number, to: number): number {
  return bearingDeg(lat[from]!, lon[from]!, lat[to]!, lon[to]!);
}

/** From one direction to another, -180 to 180, to the right positive. */
function signedDeg(from: number, to: number): number {
  return ((((to - from + 180) % 360) + 360) % 360) - 180;
}

/** The lanes that lead a side, from 1 at the left: by `turn:lanes`, else the outermost; none known straight on. */
function leadingLanes({ tags, forward }: Place, side: Side, count: number): number[] {
  const turns = tags[`turn:lanes:${forward ? 'forward' : 'backward'}`] ?? tags['turn:lanes'];
  const told = turns?.split('|') ?? [];
  if (told.length === count) {
    const leading = told.flatMap((turn, i) => (LEADS[side].test(turn) ? [i + 1] : []));
    if (leading.length > 0) return leading;
  }
  if (side === 'through') return [];
  return [side === 'left' ? 1 : count];
}

const LEADS: Readonly<Record<Side, RegExp>> = {
  left: /(^|;)(slight_|sharp_)?left/,
  through: /^$|(^|;)(through|none)/,
  right: /(^|;)(slight_|sharp_)?right/,
};
