/** A place on the ground, metres; x along the first straight, y to the left of it. */
export interface Point {
  readonly xM: number;
  readonly yM: number;
}

export type Side = 'left' | 'right';

/** The side across. */
export function otherSide(side: Side): Side {
  return side === 'left' ? 'right' : 'left';
}

/** 1 to the left, −1 to the right: the sign of what is counted left positive. */
export function signOf(side: Side): 1 | -1 {
  return side === 'left' ? 1 : -1;
}
