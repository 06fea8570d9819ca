import { CARD_BOUNDS, type CardFigure } from '../bounds.ts';

/** One figure of a card: where it stands, what it is called, in which unit, and what it may be. */
export interface Field {
  readonly key: CardFigure;
  readonly label: string;
  readonly unit: 'm' | 'kg';
  readonly optional: boolean;
  readonly least: number;
  readonly most: number;
  /** what the vehicle takes up is shown rounded up, what it clears the ground by down: neither flatters the driver */
  readonly rounding: 'up' | 'down';
  readonly hint?: string;
}

/** Something of a card that is so or not. */
export interface Tick {
  readonly key: 'rackFitted' | 'includesDriver' | 'includesFreshWater';
  readonly label: string;
}

export interface Group {
  readonly title: string;
  readonly fields: readonly Field[];
  readonly ticks: readonly Tick[];
}

type More = Partial<Pick<Field, 'optional' | 'rounding' | 'hint'>>;

function metre(key: CardFigure, label: string, more: More = {}): Field {
  return { key, label, unit: 'm', optional: false, rounding: 'up', ...CARD_BOUNDS[key], ...more };
}

function kilo(key: CardFigure, label: string, more: More = {}): Field {
  return { key, label, unit: 'kg', optional: false, rounding: 'up', ...CARD_BOUNDS[key], ...more };
}

const optional = { optional: true } as const;
const clearance = { optional: true, rounding: 'down' } as const;
const READY = 'ready to drive: fuel at 90 %, nothing else aboard but what is ticked';

export const GROUPS: readonly Group[] = [
  {
    title: 'Sizes',
    fields: [
      metre('heightM', 'Height', {
        hint: 'highest fixed point, as measured; 5 cm are added for measuring',
      }),
      metre('widthM', 'Width of the body', { hint: 'without mirrors' }),
      metre('widthMirrorsM', 'Width over mirrors'),
      metre('widthMirrorsFoldedM', 'Width over folded mirrors', optional),
      metre('lengthM', 'Length of the body', { hint: 'without a rack' }),
    ],
    ticks: [],
  },
  {
    title: 'Wheelbase and overhangs',
    fields: [
      metre('frontOverhangM', 'Front overhang'),
      metre('wheelbaseM', 'Wheelbase'),
      metre('rearOverhangM', 'Rear overhang', { hint: 'the three add up to the length' }),
      metre('trackM', 'Track', optional),
    ],
    ticks: [],
  },
  {
    title: 'Rear rack',
    fields: [
      metre('rackLengthM', 'Length behind the body', optional),
      metre('rackWidthM', 'Width loaded', optional),
      kilo('rackLimitKg', 'Most on the rack', optional),
    ],
    ticks: [{ key: 'rackFitted', label: 'The rack is fitted' }],
  },
  {
    title: 'Plates and masses',
    fields: [
      kilo('grossKg', 'Plated gross mass'),
      kilo('axleFrontKg', 'Front axle plate'),
      kilo('axleRearKg', 'Rear axle plate'),
      kilo('unladenKg', 'Unladen mass', optional),
      kilo('emptyFrontKg', 'Empty weight, front axle', { optional: true, hint: READY }),
      kilo('emptyRearKg', 'Empty weight, rear axle', { optional: true, hint: READY }),
    ],
    ticks: [
      { key: 'includesDriver', label: 'Weighed with the driver in it' },
      { key: 'includesFreshWater', label: 'Weighed with fresh water in the tank' },
    ],
  },
  {
    title: 'Turning, one of them',
    fields: [
      metre('turningCircleM', 'Turning circle between kerbs', optional),
      metre('turningCircleWallM', 'Turning circle between walls', optional),
      metre('rearAxleRadiusMinM', 'Least radius of the rear axle', optional),
    ],
    ticks: [],
  },
  {
    title: 'Clearance and gas',
    fields: [
      metre('rearClearanceM', 'Ground clearance at the tail', clearance),
      metre('bellyClearanceM', 'Ground clearance amidships', clearance),
      kilo('gasKg', 'Gas carried', optional),
    ],
    ticks: [],
  },
];

export const FIELDS: readonly Field[] = GROUPS.flatMap((group) => group.fields);
