import { METRES_PER_FOOT } from '../../units/exact.ts';
import { inUnits, type Units } from '../../units/in-units.ts';

/** One part of the work in the yard: what it finds, and what to do, step by step. */
export interface YardPart {
  readonly title: string;
  readonly steps: readonly string[];
}

/** What two people need. @param roomM the room that the vehicle takes up going round, metres */
export function yardNeeds(roomM: number, units: Units): readonly string[] {
  const [room, feet] = [Math.ceil(roomM), Math.ceil(roomM / METRES_PER_FOOT)];
  return [
    `A level, hard, empty yard of about ${inUnits(units, `${room} by ${room} m`, `${feet} by ${feet} ft`)}, dry enough for chalk. Four cones round it.`,
    `A tape of ${inUnits(units, '10 m', '33 ft')} or more, chalk, and a weight on a string to find the ground straight below a corner.`,
    'Two people: one drives, one watches and chalks. The tyres at their pressure, the rack on or off as you hire it out.',
  ];
}

/** What keeps both safe. */
export const YARD_CARE: readonly string[] = [
  'Slower than a walk. The one who watches stays in sight of the driver, beside the tail and never behind it, and out of the way of the nose.',
  'A raised hand or no sight of the other: stop. Brake on and engine off before anybody chalks at a wheel or under the vehicle.',
];

/** The work itself, in order. The letters are those of the drawing. */
export const YARD_PARTS: readonly YardPart[] = [
  {
    title: 'The line and the tail: A and B',
    steps: [
      'Drive straight ahead for two lengths, so that the wheels are straight. Stop.',
      'Choose the side away from which you will steer. With the weight and string mark the ground below that side at the nose and at the tail. Chalk a straight line through both marks and on behind the tail.',
      'On the line mark A, beside the middle of the rear wheel.',
      'Standing, turn the steering wheel away from the line as far as it goes. Hold it there until the end.',
      'Roll on as slowly as you can. Mark the ground below the outermost corner of the tail every hand’s breadth, until it comes back over the line. Stop.',
      'The mark farthest out from the line is B. Measure from the line straight out to B, and along the line from A to beside B: that should be less than half a metre.',
    ],
  },
  {
    title: 'The circle: C',
    steps: [
      'Still hard over, drive slowly once all the way round. Stop six times or more; each time chalk the ground at the middle of the inner rear tyre.',
      'Measure straight across the circle from mark to opposite mark, in three directions. C is the middle one of the three.',
      'Measure the rear track: from the outside of one rear tyre to the inside of the other.',
    ],
  },
];

/** What may be done more, and what then counts. */
export const YARD_BOTH_WAYS =
  'With time left, do the same to the other side: few vehicles turn alike to both. Type in B and C of one side, never one of each: those of the side with the larger B, where the tail goes out farther.';
