import { toDeg, wrapRad } from '../../earth/angles.ts';
import { itemAt } from '../../lists.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads } from '../../roads/roads.ts';
import type { DrivenTurn } from './driven-turn.ts';
import { headingAfter, headingBefore } from './legs.ts';
import { isRing, ringRadiusM } from './ring.ts';
import { headingBetween, type TurnLine } from './turn-line.ts';

/** Shorter roads to or from a ring tell no direction. Metres. */
const LEAST_LEG_M = 1;
/** Direction on the ring: on this stretch from where it is met, since nobody drives the drawn corner. Metres, and shares of the radius. */
const RING_FROM = { mostM: 5, ofRadius: 0.4 };
const RING_TO = { mostM: 15, ofRadius: 1.2 };
/** A ring left again sooner than this is one turn. Metres. */
const ONE_TURN_M = 15;
/** Driven less far round, a ring is only its flicks. Degrees. */
const LEAST_ROUND_DEG = 90;
/** Less is no turn. Degrees. */
const LEAST_FLICK_DEG = 25;

/** A ring on a line: places from the first on it to the last. */
export interface RingPassage {
  readonly first: number;
  readonly last: number;
}

/** Where the line runs round rings. */
export function ringPassages(line: TurnLine, roads: Roads): RingPassage[] {
  const passages: RingPassage[] = [];
  let first = -1;
  for (let i = 0; i <= line.stretch.length; i++) {
    const stretch = line.stretch[i];
    const onRing = stretch !== undefined && isRing(mappedOn(roads, stretch.way));
    if (onRing && first < 0) first = i;
    if (!onRing && first >= 0) {
      passages.push({ first, last: i });
      first = -1;
    }
  }
  return passages;
}

/** The turns that one ring makes: onto it, round it, off it. */
export function turnsOfRing(line: TurnLine, roads: Roads, passage: RingPassage): DrivenTurn[] {
  const { first, last } = passage;
  const ring = line.stretch[first];
  if (ring === undefined) return [];
  const [firstM, lastM] = [line.atM[first]!, line.atM[last]!];
  const before = legBefore(line, first);
  const after = legAfter(line, last);
  if (lastM - firstM < ONE_TURN_M) {
    const [whole] = flick(line, { part: 'entry', i: first, from: before, to: after });
    const exit = line.stretch[last];
    return whole === undefined || exit === undefined ? [] : [{ ...whole, exit, toM: lastM }];
  }
  const radiusM = ringRadiusM(roads, ring.way);
  const fromM = Math.min(RING_FROM.mostM, RING_FROM.ofRadius * (radiusM ?? Number.POSITIVE_INFINITY));
  const toM = Math.min(RING_TO.mostM, RING_TO.ofRadius * (radiusM ?? Number.POSITIVE_INFINITY));
  const onto = headingBetween(line, firstM + fromM, Math.min(firstM + toM, lastM));
  const off = headingBetween(line, Math.max(lastM - toM, firstM), lastM - fromM);
  const side = turnedRad(line, passage) > 0 ? 'left' : 'right';
  // steered the same way as the ring it is no flick but the ring itself
  const isFlick = (one: DrivenTurn) => one.side !== side;
  return [
    ...flick(line, { part: 'entry', i: first, from: before, to: onto }).filter(isFlick),
    ...(radiusM === undefined ? [] : roundIt(line, passage, side, radiusM)),
    ...flick(line, { part: 'exit', i: last, from: off, to: after }).filter(isFlick),
  ];
}

function turnedRad(line: TurnLine, { first, last }: RingPassage): number {
  let sum = 0;
  for (let i = first + 1; i < last; i++) sum += line.turnRad[i]!;
  return sum;
}

function roundIt(
  line: TurnLine,
  { first, last }: RingPassage,
  side: DrivenTurn['side'],
  radiusM: number,
): DrivenTurn[] {
  const entry = line.stretch[first];
  const exit = line.stretch[last - 1];
  const [fromM, toM] = [line.atM[first]!, line.atM[last]!];
  const turnDeg = toDeg((toM - fromM) / radiusM);
  if (entry === undefined || exit === undefined || turnDeg < LEAST_ROUND_DEG) return [];
  return [
    {
      kind: 'roundabout',
      part: 'ring',
      side,
      turnDeg: Math.min(360, turnDeg),
      fromM,
      toM,
      atM: (fromM + toM) / 2,
      node: itemAt(line.node, first),
      entry,
      exit,
      drawnRadiusM: radiusM,
    },
  ];
}

/** Steering onto a ring or off it, at a place of the line, from one direction into another. */
interface Flick {
  readonly part: 'entry' | 'exit';
  readonly i: number;
  readonly from: number | undefined;
  readonly to: number | undefined;
}

function flick(line: TurnLine, { part, i, from, to }: Flick): DrivenTurn[] {
  const entry = line.stretch[i - 1];
  const exit = line.stretch[i];
  if (from === undefined || to === undefined || entry === undefined || exit === undefined) return [];
  const turnRad = wrapRad(to - from);
  const turnDeg = toDeg(Math.abs(turnRad));
  if (turnDeg < LEAST_FLICK_DEG) return [];
  const atM = line.atM[i]!;
  const node = itemAt(line.node, i);
  const side = turnRad > 0 ? 'left' : 'right';
  return [{ kind: 'roundabout', side, turnDeg, fromM: atM, toM: atM, part, atM, node, entry, exit }];
}

function legBefore(line: TurnLine, i: number): number | undefined {
  const atM = line.atM[i]!;
  const roomM = atM - line.atM[0]!;
  return roomM < LEAST_LEG_M ? undefined : headingBefore(line, { atM, roomM });
}

function legAfter(line: TurnLine, i: number): number | undefined {
  const atM = line.atM[i]!;
  const roomM = line.atM.at(-1)! - atM;
  return roomM < LEAST_LEG_M ? undefined : headingAfter(line, { atM, roomM });
}
