import { headingBetween, type TurnLine } from './turn-line.ts';

/** Directions before and after a turn are taken on this stretch of the road, or on as much of it as there is. Metres. */
const FROM_M = 10;
const TO_M = 25;
/** Where the road is too short for that, its nearest part is left out, so much of it. */
const LEFT_OUT = 0.4;

/** A road before or after a turn: where the turn is, metres along the drive, and how much road there is. */
export interface Leg {
  readonly atM: number;
  readonly roomM: number;
}

/** Direction of the road before a turn, radians anticlockwise from east. */
export function headingBefore(line: TurnLine, { atM, roomM }: Leg): number {
  const lengthM = Math.min(TO_M, roomM);
  return headingBetween(line, atM - lengthM, atM - Math.min(FROM_M, LEFT_OUT * lengthM));
}

/** Direction of the road after a turn, radians anticlockwise from east. */
export function headingAfter(line: TurnLine, { atM, roomM }: Leg): number {
  return headingBetween(
    line,
    atM + Math.min(FROM_M, LEFT_OUT * Math.min(TO_M, roomM)),
    endOfLeg({ atM, roomM }),
  );
}

/** The farther end of the road after a turn, metres along the drive. */
export function endOfLeg({ atM, roomM }: Leg): number {
  return atM + Math.min(TO_M, roomM);
}
