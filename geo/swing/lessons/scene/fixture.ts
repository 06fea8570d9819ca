import type { Point } from '../../point.ts';

/** What a thing beside the vehicle is, which says how it is met and drawn. */
export type FixtureKind =
  | 'kerb'
  | 'wall'
  | 'hedge'
  | 'parked car'
  | 'post'
  | 'island'
  | 'lane line'
  | 'pitch';

/** Which of the things of a scene it is: no two of one scene have the same part, but for kerbs opposite. */
export type FixtureRole =
  // alongside
  | 'wall'
  | 'kerb'
  | 'post behind the kerb'
  | 'parked car'
  // a bay that is backed out of
  | 'kerb at the head of the bay'
  | 'hedge across the aisle'
  // a side road
  | 'kerb of the corner'
  | 'far kerb of the side road'
  | 'kerb opposite'
  | 'middle line of the main road'
  | 'middle line of the side road'
  // a mini-roundabout
  | 'dome'
  | 'kerb on the way in'
  | 'kerb on the way out'
  | 'splitter island on the way in'
  | 'splitter island of the arm beside'
  | 'splitter island on the way out'
  | 'splitter island of the arm opposite'
  // a pitch off a narrow lane
  | 'hedge opposite'
  | 'hedge before the gateway'
  | 'hedge after the gateway'
  | 'near post'
  | 'far post'
  | 'pitch'
  // a turn of a drive
  | 'inner kerb'
  | 'outer kerb'
  | 'lane line'
  | 'middle line'
  | 'island'
  | 'kerb it leaves'
  | 'kerb across the road';

/** Something beside the vehicle: a line to keep to, or a thing that is hit. */
export interface Fixture {
  readonly kind: FixtureKind;
  readonly role: FixtureRole;
  /** ends where it began: an outline with an inside */
  readonly closed: boolean;
  readonly line: readonly Point[];
  /** touching it is a contact; crossing a painted line is not. A kerb is run over by wheels and overhung by the body. */
  readonly hard: boolean;
}
