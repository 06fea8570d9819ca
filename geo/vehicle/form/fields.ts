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
  /** of a size that is drawn: the same beside the field and on the drawing */
  readonly letter?: string;
}

/** Something of a card that is so or not. */
export interface Tick {
  readonly key: 'rackFitted' | 'includesDriver' | 'includesFreshWater';
  readonly label: string;
}

export interface Group {
  readonly title: string;
  readonly folded: boolean;
  readonly fields: readonly Field[];
  readonly ticks: readonly Tick[];
}

type More = Partial<Pick<Field, 'optional' | 'rounding' | 'hint' | 'letter'>>;

function metre(key: CardFigure, label: string, more: More = {}): Field {
  return { key, label, unit: 'm', optional: false, rounding: 'up', ...CARD_BOUNDS[key], ...more };
}

function kilo(key: CardFigure, label: string, more: More = {}): Field {
  return { key, label, unit: 'kg', optional: false, rounding: 'up', ...CARD_BOUNDS[key], ...more };
}

const optional = { optional: true } as const;
const clearance = { optional: true, rounding: 'down' } as const;
const READY = 'ready to drive: fuel at 90 %, nothing else aboard but what is ticked';

/** What decides most places on the road comes first; the rest is folded until it is wanted. */
export const GROUPS: readonly Group[] = [
  {
    title: 'The five that decide',
    folded: false,
    fields: [
      metre('heightM', 'Height', {
        letter: 'A',
        hint: 'highest fixed point, as measured; 5 cm are added for measuring',
      }),
      metre('widthMirrorsM', 'Width over mirrors', { letter: 'B' }),
      metre('widthM', 'Width of the body', { letter: 'C', hint: 'without mirrors' }),
      metre('lengthM', 'Length of the body', { letter: 'D', hint: 'without a rack' }),
      kilo('grossKg', 'Most it may weigh', { hint: 'the plated gross mass' }),
    ],
    ticks: [],
  },
  {
    title: 'Wheelbase and overhangs',
    folded: true,
    fields: [
      metre('frontOverhangM', 'Front overhang', { letter: 'E' }),
      metre('wheelbaseM', 'Wheelbase', { letter: 'F' }),
      metre('rearOverhangM', 'Rear overhang', { letter: 'G', hint: 'E, F and G add up to the length D' }),
      metre('trackM', 'Track', optional),
      metre('widthMirrorsFoldedM', 'Width over folded mirrors', optional),
    ],
    ticks: [],
  },
  {
    title: 'Axle plates and empty weight',
    folded: true,
    fields: [
      kilo('axleFrontKg', 'Front axle plate'),
      kilo('axleRearKg', 'Rear axle plate'),
      kilo('unladenKg', 'Unladen mass', { optional: true, hint: 'without fuel, driver, water, gas or load' }),
      kilo('emptyFrontKg', 'Empty weight, front axle', { optional: true, hint: READY }),
      kilo('emptyRearKg', 'Empty weight, rear axle', { optional: true, hint: READY }),
    ],
    ticks: [
      { key: 'includesDriver', label: 'Weighed with the driver in it' },
      { key: 'includesFreshWater', label: 'Weighed with fresh water in the tank' },
    ],
  },
  {
    title: 'Rear rack',
    folded: true,
    fields: [
      metre('rackLengthM', 'Length behind the body', { optional: true, letter: 'H' }),
      metre('rackWidthM', 'Width loaded', { optional: true, letter: 'J' }),
      kilo('rackLimitKg', 'Most on the rack', optional),
    ],
    ticks: [{ key: 'rackFitted', label: 'The rack is fitted' }],
  },
  {
    title: 'Turning, one of them',
    folded: true,
    fields: [
      metre('turningCircleM', 'Turning circle between kerbs', optional),
      metre('turningCircleWallM', 'Turning circle between walls', optional),
      metre('rearAxleRadiusMinM', 'Least radius of the rear axle', optional),
    ],
    ticks: [],
  },
  {
    title: 'Ground clearance and gas',
    folded: true,
    fields: [
      metre('rearClearanceM', 'Ground clearance at the tail', { ...clearance, letter: 'K' }),
      metre('bellyClearanceM', 'Ground clearance amidships', clearance),
      kilo('gasKg', 'Gas carried', optional),
    ],
    ticks: [],
  },
];

export const FIELDS: readonly Field[] = GROUPS.flatMap((group) => group.fields);

/** The letter of a size on the drawing of the card, and beside its field. */
export function letterOf(key: CardFigure): string {
  return FIELDS.find((field) => field.key === key)?.letter ?? '';
}
