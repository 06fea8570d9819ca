import { beforeFirst, listed } from '../units/text.ts';
import type { Direction } from './driven.ts';

/** Which lanes of a way a `:lanes` key speaks of; undefined: all lanes of a one-way road, or nobody said. */
export type LaneDirection = 'forward' | 'backward' | 'both_ways' | undefined;

export interface LaneKey {
  /** the key without its lane parts: `maxwidth`, `motor_vehicle` */
  readonly base: string;
  readonly direction: LaneDirection;
  readonly conditional: boolean;
}

/** Keys that tell what a lane is for or looks like, and limit nobody. */
const NOT_LIMITS = new Set(
  (
    'turn change destination placement width est_width surface smoothness colour lane_markings hazard parking cycleway ' +
    'overtaking maxspeed minspeed note description source oneway transition traffic_sign name ref lanes bridge'
  ).split(' '),
);

/**
 * Reads a key such as `maxwidth:lanes:forward` or `motor_vehicle:lanes:conditional`.
 * @returns undefined for keys that are not about lanes, or whose lane values limit nobody (`turn:lanes`)
 */
export function readLaneKey(key: string): LaneKey | undefined {
  const found = /^(.+?):lanes(?::(forward|backward|both_ways))?(:conditional)?$/.exec(key);
  const base = found?.[1];
  if (base === undefined || NOT_LIMITS.has(beforeFirst(base, ':'))) return undefined;
  return { base, direction: found?.[2] as LaneDirection, conditional: found?.[3] !== undefined };
}

/**
 * Whether a lane key speaks of lanes driven in this direction. Without a direction it means the lanes of a one-way
 * road; on a two-way road nobody can tell, so it counts for both. The middle lane of both ways is no lane to drive along.
 */
export function lanesDriven(key: LaneKey, driven: Direction): boolean {
  return key.direction === undefined || key.direction === driven;
}

/** What the value of one lane does to the vehicle. */
export type LaneReading = 'binds' | 'free' | 'unreadable';

export interface LaneLimit {
  /** lanes that stop the vehicle, unreadable ones counted in: all, some, none of them */
  readonly bound: 'all' | 'some' | 'none';
  /** one reading per lane, from the left in driving direction */
  readonly lanes: readonly LaneReading[];
  /** numbers of the lanes that are bound and of those that are not, from 1 at the left */
  readonly boundAt: readonly number[];
  readonly freeAt: readonly number[];
  /** "the left lane", "lanes 1 and 2 of 4 from the left"; '' when none is bound */
  readonly boundLanes: string;
  /** the same for the lanes that are open; '' when none is */
  readonly freeLanes: string;
}

/** The values of `a|b|c` from the left in driving direction; an empty lane has the value of the key without `:lanes`. */
export function laneValues(text: string, base: string | undefined): (string | undefined)[] {
  return text.split('|').map((value) => (value.trim() === '' ? base : value.trim()));
}

/** Names lanes as a driver sees them. @param numbers from 1 at the left, ascending */
function nameLanes(numbers: readonly number[], count: number): string {
  const [first] = numbers;
  if (first === undefined) return '';
  if (numbers.length === count) return count === 1 ? 'the only lane' : `all ${count} lanes`;
  if (numbers.length > 1) return `lanes ${listed(numbers)} of ${count} from the left`;
  if (first === 1) return 'the left lane';
  if (first === count) return 'the right lane';
  return count === 3 ? 'the middle lane' : `lane ${first} of ${count} from the left`;
}

/**
 * Whether a limit given lane by lane binds on all lanes, on some, or on none.
 * @param text the value of a `:lanes` key
 * @param base the value of the key without `:lanes`, for empty lanes
 * @param read what one lane's value does to the vehicle; not asked about a lane without any value, which is free
 */
export function limitOnLanes(
  text: string,
  base: string | undefined,
  read: (value: string) => LaneReading,
): LaneLimit {
  const lanes = laneValues(text, base).map((value) => (value === undefined ? 'free' : read(value)));
  const numbersOf = (free: boolean) =>
    lanes.flatMap((lane, i) => ((lane === 'free') === free ? [i + 1] : []));
  const [free, bound] = [numbersOf(true), numbersOf(false)];
  return {
    bound: free.length === 0 ? 'all' : bound.length === 0 ? 'none' : 'some',
    lanes,
    boundAt: bound,
    freeAt: free,
    boundLanes: nameLanes(bound, lanes.length),
    freeLanes: nameLanes(free, lanes.length),
  };
}
