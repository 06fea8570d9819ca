/** One figure of a card: where it stands, what it is called, in which unit, and what it may be. */
export interface Field {
  readonly key: FieldKey;
  readonly label: string;
  readonly unit: 'm' | 'kg';
  readonly optional?: boolean;
  /** as the card's schema has it */
  readonly least: number;
  readonly most: number;
  readonly hint?: string;
}

export type FieldKey =
  | 'heightM'
  | 'widthM'
  | 'widthMirrorsM'
  | 'widthMirrorsFoldedM'
  | 'lengthM'
  | 'wheelbaseM'
  | 'frontOverhangM'
  | 'rearOverhangM'
  | 'trackM'
  | 'rackLengthM'
  | 'rackWidthM'
  | 'rackLimitKg'
  | 'turningCircleM'
  | 'turningCircleWallM'
  | 'rearAxleRadiusMinM'
  | 'grossKg'
  | 'axleFrontKg'
  | 'axleRearKg'
  | 'unladenKg'
  | 'orderFrontKg'
  | 'orderRearKg'
  | 'rearClearanceM'
  | 'bellyClearanceM'
  | 'gasKg';

export interface Group {
  readonly title: string;
  readonly fields: readonly Field[];
}

const metre = (
  key: FieldKey,
  label: string,
  least: number,
  most: number,
  more: Partial<Field> = {},
): Field => ({
  key,
  label,
  unit: 'm',
  least,
  most,
  ...more,
});
const kilo = (
  key: FieldKey,
  label: string,
  least: number,
  most: number,
  more: Partial<Field> = {},
): Field => ({
  key,
  label,
  unit: 'kg',
  least,
  most,
  ...more,
});
const optional = { optional: true } as const;

export const GROUPS: readonly Group[] = [
  {
    title: 'Sizes',
    fields: [
      metre('heightM', 'Height', 1.5, 5, {
        hint: 'highest fixed point, as measured; 5 cm are added for measuring',
      }),
      metre('widthM', 'Width of the body', 1, 4, { hint: 'without mirrors' }),
      metre('widthMirrorsM', 'Width over mirrors', 1, 5),
      metre('widthMirrorsFoldedM', 'Width over folded mirrors', 1, 5, optional),
      metre('lengthM', 'Length of the body', 2.5, 20, { hint: 'without a rack' }),
    ],
  },
  {
    title: 'Wheelbase and overhangs',
    fields: [
      metre('frontOverhangM', 'Front overhang', 0, 5),
      metre('wheelbaseM', 'Wheelbase', 1, 15),
      metre('rearOverhangM', 'Rear overhang', 0, 8, { hint: 'the three add up to the length' }),
      metre('trackM', 'Track', 0.8, 4, optional),
    ],
  },
  {
    title: 'Rear rack',
    fields: [
      metre('rackLengthM', 'Length behind the body', 0.1, 3, optional),
      metre('rackWidthM', 'Width loaded', 0.1, 4, optional),
      kilo('rackLimitKg', 'Most on the rack', 1, 1000, optional),
    ],
  },
  {
    title: 'Plates and masses',
    fields: [
      kilo('grossKg', 'Plated gross mass', 500, 60_000),
      kilo('axleFrontKg', 'Front axle plate', 200, 30_000),
      kilo('axleRearKg', 'Rear axle plate', 200, 30_000),
      kilo('unladenKg', 'Unladen mass', 300, 60_000, optional),
      kilo('orderFrontKg', 'Running order, front axle', 100, 30_000, optional),
      kilo('orderRearKg', 'Running order, rear axle', 100, 30_000, optional),
    ],
  },
  {
    title: 'Turning, one of them',
    fields: [
      metre('turningCircleM', 'Turning circle between kerbs', 4, 50, optional),
      metre('turningCircleWallM', 'Turning circle between walls', 4, 50, optional),
      metre('rearAxleRadiusMinM', 'Least radius of the rear axle', 1, 30, optional),
    ],
  },
  {
    title: 'Clearance and gas',
    fields: [
      metre('rearClearanceM', 'Ground clearance at the tail', 0.02, 2, optional),
      metre('bellyClearanceM', 'Ground clearance amidships', 0.02, 2, optional),
      kilo('gasKg', 'Gas carried', 0, 1000, optional),
    ],
  },
];

export const FIELDS: readonly Field[] = GROUPS.flatMap((group) => group.fields);
