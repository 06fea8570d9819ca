import type { Place } from '../earth/sphere.ts';
import type { TurnRestriction } from '../roads/roads.ts';

/** A route matched to roads. Distances are metres along the drive, gaps counting nothing. */
export interface Drive {
  readonly lengthM: number;
  readonly legs: readonly Leg[];
  /** spans filled in between sparse route points, where another road may be meant */
  readonly guessed: readonly Span[];
  /** spans where the match itself is in doubt (two roads explain the points about as well) */
  readonly doubtful: readonly Span[];
  /** turns driven although a mapped turn restriction forbids them, or may forbid them (read the restriction's tags) */
  readonly brokenTurns: readonly BrokenTurn[];
}

export type Leg = Stretch | OffMap | Gap;

/**
 * A run of one road (way + direction). Consecutive stretches meet at a node, or where the drive turns back.
 * A closed way driven past its first node is two stretches, so the metres along the way never jump.
 */
export interface Stretch {
  readonly kind: 'stretch';
  /** index into Roads.ways */
  readonly way: number;
  /** along the way's drawn order */
  readonly forward: boolean;
  /** metres along the way from its first ref; from < to when forward, from > to when not */
  readonly alongFromM: number;
  readonly alongToM: number;
  /** metres along the drive */
  readonly fromM: number;
  readonly toM: number;
}

/**
 * Part of the route with no mapped road under it. `lat`/`lon` are the route's own positions there, with the places
 * where the drive leaves a road and meets one again as first and last.
 */
export interface OffMap {
  readonly kind: 'offMap';
  readonly fromM: number;
  readonly toM: number;
  readonly lat: readonly number[];
  readonly lon: readonly number[];
}

/** A break between two segments of the file: not driven, zero length along the drive. */
export interface Gap {
  readonly kind: 'gap';
  readonly atM: number;
  readonly straightM: number;
  readonly from: Place;
  readonly to: Place;
}

export interface Span {
  readonly fromM: number;
  readonly toM: number;
}

export interface BrokenTurn {
  readonly atM: number;
  readonly restriction: TurnRestriction;
  readonly lat: number;
  readonly lon: number;
}
