import { toDeg, toRad, wrapRad } from '../../earth/angles.ts';
import { ROAD_CLASS } from '../../graph/road-class.ts';
import { roadGraph } from '../../graph/road-graph.ts';
import { itemAt } from '../../lists.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import type { DrivenTurn } from './driven-turn.ts';
import { endOfLeg, headingAfter, headingBefore, type Leg } from './legs.ts';
import { headingBetween, type TurnLine } from './turn-line.ts';

/** Less at a place is a mapper's wobble. */
const WOBBLE_RAD = toRad(5);
/** A corner turns within this much road to either side of a place; what takes more is a bend with a radius. Metres. */
const CORNER_REACH_M = 6;
/** A place from which a corner may be made up. */
const SHARP_RAD = toRad(35);
/** Sharp places on short connecting ways are one corner: islands, split carriageways. Metres. */
const ONE_CORNER_M = 8;
/** No corner is drawn over more road. Metres. */
const LONGEST_CORNER_M = 20;
/** Shorter legs tell no direction. Metres. */
const LEAST_LEG_M = 2;
/** A corner makes most of the turn; where it makes less, the road bends round. */
const OF_THE_TURN = 0.7;
/** About half a turn. */
const BACK_RAD = toRad(165);
/** Turning on the spot, as drawn; less than half a turn by rounding alone. */
const ON_THE_SPOT_RAD = toRad(179.9);

/** Places of the line, first and last, that make up one corner. */
interface Corner {
  readonly first: number;
  readonly last: number;
}

/** Sharp corners of a line: at junctions, in narrow roads, and where the drive turns back. */
export function findCorners(line: TurnLine, roads: Roads, taken: (i: number) => boolean): DrivenTurn[] {
  const corners = sharpPlaces(line, taken);
  return corners.flatMap((corner, c) => {
    // a ring or a hairpin beside it is no leg
    let from = corner.first;
    while (from > (corners[c - 1]?.last ?? 0) && !taken(from)) from--;
    let to = corner.last;
    while (to < (corners[c + 1]?.first ?? line.atM.length - 1) && !taken(to)) to++;
    const before = { atM: line.atM[corner.first]!, roomM: line.atM[corner.first]! - line.atM[from]! };
    const after = { atM: line.atM[corner.last]!, roomM: line.atM[to]! - line.atM[corner.last]! };
    if (before.roomM < LEAST_LEG_M || after.roomM < LEAST_LEG_M) return [];
    const turn = turnAt(line, roads, { corner, before, after });
    return turn === undefined ? [] : [turn];
  });
}

function sharpPlaces(line: TurnLine, taken: (i: number) => boolean): Corner[] {
  const { atM, turnRad } = line;
  const corners: Sharp[] = [];
  for (let i = 1; i < atM.length - 1; i++) {
    if (Math.abs(turnRad[i]!) < WOBBLE_RAD || taken(i)) continue;
    const here = sharpAround(line, taken, i);
    if (here === undefined) continue;
    const before = corners.at(-1);
    if (before === undefined || atM[here.first]! - atM[before.last]! > ONE_CORNER_M) corners.push(here);
    else corners[corners.length - 1] = joinSharp(before, here);
  }
  // drawn over more road it is a bend, and only its sharpest part a corner
  return corners.map(({ first, last, peak }) =>
    atM[last]! - atM[first]! > LONGEST_CORNER_M ? { first: peak.first, last: peak.last } : { first, last },
  );
}

/** A corner with the sharpest window in it. */
interface Sharp extends Corner {
  readonly peak: Corner & { readonly turnRad: number };
}

function joinSharp(a: Sharp, b: Sharp): Sharp {
  return {
    first: a.first,
    last: Math.max(a.last, b.last),
    peak: b.peak.turnRad > a.peak.turnRad + 1e-6 ? b.peak : a.peak,
  };
}

/** The places that turn together with one place, where that is sharp. */
function sharpAround(line: TurnLine, taken: (i: number) => boolean, i: number): Sharp | undefined {
  const { atM, turnRad } = line;
  const at = (k: number) => turnRad[k]!;
  let [sum, first, last] = [at(i), i, i];
  for (let k = i - 1; k > 0 && near(atM, k, i) && !taken(k); k--) {
    sum += at(k);
    if (Math.abs(at(k)) >= WOBBLE_RAD) first = k;
  }
  for (let k = i + 1; k < atM.length - 1 && near(atM, k, i) && !taken(k); k++) {
    sum += at(k);
    if (Math.abs(at(k)) >= WOBBLE_RAD) last = k;
  }
  const turn = Math.max(Math.abs(sum), Math.abs(at(i)));
  return turn < SHARP_RAD ? undefined : { first, last, peak: { first, last, turnRad: turn } };
}

function near(atM: Float64Array, a: number, b: number): boolean {
  return Math.abs(atM[a]! - atM[b]!) <= CORNER_REACH_M;
}

/** A corner with the roads that lead to it and away from it. */
interface Approached {
  readonly corner: Corner;
  readonly before: Leg;
  readonly after: Leg;
}

function turnAt(line: TurnLine, roads: Roads, { corner, before, after }: Approached): DrivenTurn | undefined {
  const { first, last } = corner;
  const [fromM, toM] = [before.atM, after.atM];
  const entry = line.stretch[first - 1];
  const exit = line.stretch[last];
  if (entry === undefined || exit === undefined) return undefined;
  const heading = headingBefore(line, before);
  const drawnRad = sumOf(line.turnRad, first, last);
  const netRad = wrapRad(headingAfter(line, after) - heading);
  const back = isTurnBack(line, corner);
  if (!back && Math.abs(drawnRad) < OF_THE_TURN * Math.abs(netRad)) return undefined;
  // at about half a turn the sign of the net angle is chance
  const sign = Math.abs(netRad) > BACK_RAD ? drawnRad : netRad;
  return {
    kind: back ? 'u-turn' : isJunction(line, roads, corner) ? 'junction' : 'bend',
    side: sign > 0 ? 'left' : 'right',
    turnDeg: toDeg(back ? Math.PI : Math.abs(netRad)),
    fromM,
    toM,
    atM: (fromM + toM) / 2,
    node: turningNode(line, roads, corner),
    entry,
    exit,
    ...(back ? { apartM: 0 } : {}),
    ...(!back && Math.abs(netRad) > BACK_RAD
      ? { apartM: apartM(line, { fromM, toM: endOfLeg(after), heading }) }
      : {}),
  };
}

/** Metres that a later place lies to the side of a direction through an earlier one. */
function apartM(
  line: TurnLine,
  { fromM, toM, heading }: { readonly fromM: number; readonly toM: number; readonly heading: number },
): number {
  return Math.abs(Math.sin(headingBetween(line, fromM, toM) - heading) * (toM - fromM));
}

function sumOf(values: Float64Array, first: number, last: number): number {
  let sum = 0;
  for (let i = first; i <= last; i++) sum += values[i]!;
  return sum;
}

/** Out and back on one way. */
function isTurnBack(line: TurnLine, { first, last }: Corner): boolean {
  for (let i = first; i <= last; i++) {
    const [a, b] = [line.stretch[i - 1], line.stretch[i]];
    if (a !== undefined && a.way === b?.way && a.forward !== b.forward) return true;
    if (Math.abs(line.turnRad[i]!) > ON_THE_SPOT_RAD) return true;
  }
  return false;
}

/** The sharpest place of a corner. */
function turningNode(line: TurnLine, roads: Roads, { first, last }: Corner): number {
  let best = first;
  for (let i = first; i <= last; i++) {
    const node = line.node[i]!;
    if (node >= 0 && isTurningPlace(roads.nodes.tags.get(node))) return node;
    if (Math.abs(line.turnRad[i]!) > Math.abs(line.turnRad[best]!) + 1e-9) best = i;
  }
  return itemAt(line.node, best);
}

function isTurningPlace(tags: Tags | undefined): boolean {
  const highway = tags?.['highway'];
  return highway === 'mini_roundabout' || highway === 'turning_circle' || highway === 'turning_loop';
}

function isJunction(line: TurnLine, roads: Roads, { first, last }: Corner): boolean {
  for (let i = first; i <= last; i++) if (line.node[i]! >= 0 && armsAt(roads, line.node[i]!) > 2) return true;
  return false;
}

/** How many roads for motor vehicles leave a node; drives to single houses are none. */
function armsAt(roads: Roads, node: number): number {
  const graph = roadGraph(roads);
  let arms = 0;
  for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++) {
    const edge = graph.out[i]! >> 1;
    const kind = graph.roadClass[edge]!;
    if (kind === ROAD_CLASS.path || kind === ROAD_CLASS.ferry) continue;
    if (roads.ways.tags[graph.way[edge]!]?.['service'] !== 'driveway') arms++;
  }
  return arms;
}
