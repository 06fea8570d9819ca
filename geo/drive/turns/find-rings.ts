import type { Roads } from '../../roads/roads.ts';
import type { DrivenTurn } from './driven-turn.ts';
import { isRing, ringRadiusM } from './ring.ts';
import { headingBetween, type TurnLine, wrapRad } from './turn-line.ts';

/** Directions before and after a ring are taken on this stretch of the road. Metres. */
const LEG_FROM_M = 10;
const LEG_TO_M = 25;
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
    const onRing = stretch !== undefined && isRing(roads.ways.tags[stretch.way] ?? {});
    if (onRing && first < 0) first = i;
    if (!onRing && first >= 0) {
      passages.push({ first, last: i });
      first = -1;
    }
  }
  return passages;
}

/** The turns that one ring makes: onto it, round it, off it. */
export function turnsOfRing(line: TurnLine, roads: Roads, { first, last }: RingPassage): DrivenTurn[] {
  const atM = (i: number) => line.atM[i]!;
  const drivenM = atM(last) - atM(first);
  const before = legBefore(line, first);
  const after = legAfter(line, last);
  const ring = line.stretch[first];
  if (ring === undefined) return [];
  const turn = (
    part: NonNullable<DrivenTurn['part']>,
    i: number,
    from: number | undefined,
    to: number | undefined,
  ): DrivenTurn[] => {
    const entry = line.stretch[i - 1];
    const exit = line.stretch[i];
    if (from === undefined || to === undefined || entry === undefined || exit === undefined) return [];
    return flick({ part, atM: atM(i), node: line.node[i] ?? -1, entry, exit }, wrapRad(to - from));
  };
  if (drivenM < ONE_TURN_M) {
    const [whole] = turn('entry', first, before, after);
    const exit = line.stretch[last];
    return whole === undefined || exit === undefined ? [] : [{ ...whole, exit, toM: atM(last) }];
  }
  const radiusM = ringRadiusM(roads, ring.way);
  const fromM = Math.min(RING_FROM.mostM, RING_FROM.ofRadius * (radiusM ?? Number.POSITIVE_INFINITY));
  const toM = Math.min(RING_TO.mostM, RING_TO.ofRadius * (radiusM ?? Number.POSITIVE_INFINITY));
  const onto = headingBetween(line, atM(first) + fromM, Math.min(atM(first) + toM, atM(last)));
  const off = headingBetween(line, Math.max(atM(last) - toM, atM(first)), atM(last) - fromM);
  const side = turnedRad(line, first, last) > 0 ? 'left' : 'right';
  // steered the same way as the ring it is no flick but the ring itself
  const isFlick = (one: DrivenTurn) => one.side !== side;
  return [
    ...turn('entry', first, before, onto).filter(isFlick),
    ...(radiusM === undefined ? [] : roundIt(line, first, last, side, radiusM)),
    ...turn('exit', last, off, after).filter(isFlick),
  ];
}

function turnedRad(line: TurnLine, first: number, last: number): number {
  let sum = 0;
  for (let i = first + 1; i < last; i++) sum += line.turnRad[i]!;
  return sum;
}

function roundIt(
  line: TurnLine,
  first: number,
  last: number,
  side: DrivenTurn['side'],
  radiusM: number,
): DrivenTurn[] {
  const entry = line.stretch[first];
  const exit = line.stretch[last - 1];
  const [fromM, toM] = [line.atM[first]!, line.atM[last]!];
  const turnDeg = ((toM - fromM) / radiusM) * (180 / Math.PI);
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
      node: line.node[first] ?? -1,
      entry,
      exit,
      drawnRadiusM: radiusM,
    },
  ];
}

function flick(
  at: Pick<DrivenTurn, 'atM' | 'node' | 'entry' | 'exit'> & { readonly part: 'entry' | 'ring' | 'exit' },
  turnRad: number,
): DrivenTurn[] {
  const turnDeg = (Math.abs(turnRad) * 180) / Math.PI;
  if (turnDeg < LEAST_FLICK_DEG) return [];
  return [
    { kind: 'roundabout', side: turnRad > 0 ? 'left' : 'right', turnDeg, fromM: at.atM, toM: at.atM, ...at },
  ];
}

function legBefore(line: TurnLine, i: number): number | undefined {
  const m = line.atM[i]!;
  const roomM = Math.min(LEG_TO_M, m - line.atM[0]!);
  return roomM < 1 ? undefined : headingBetween(line, m - roomM, m - Math.min(LEG_FROM_M, 0.4 * roomM));
}

function legAfter(line: TurnLine, i: number): number | undefined {
  const m = line.atM[i]!;
  const roomM = Math.min(LEG_TO_M, (line.atM.at(-1) as number) - m);
  return roomM < 1 ? undefined : headingBetween(line, m + Math.min(LEG_FROM_M, 0.4 * roomM), m + roomM);
}
