/** What a figure may be, the ends included. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
}

/**
 * What each figure of a card may be, metres and kilograms; the file's schema and the form keep to them. A figure outside
 * what any motorhome has is a slip (centimetres, tonnes, a lost digit) and would clear every bridge.
 */
export const CARD_BOUNDS = {
  heightM: { least: 1.5, most: 5 },
  widthM: { least: 1, most: 4 },
  widthMirrorsM: { least: 1, most: 5 },
  widthMirrorsFoldedM: { least: 1, most: 5 },
  lengthM: { least: 2.5, most: 20 },
  wheelbaseM: { least: 1, most: 15 },
  frontOverhangM: { least: 0, most: 5 },
  rearOverhangM: { least: 0, most: 8 },
  trackM: { least: 0.8, most: 4 },
  rackLengthM: { least: 0.1, most: 3 },
  rackWidthM: { least: 0.1, most: 4 },
  rackLimitKg: { least: 1, most: 1000 },
  turningCircleM: { least: 4, most: 50 },
  turningCircleWallM: { least: 4, most: 50 },
  rearAxleRadiusMinM: { least: 1, most: 30 },
  grossKg: { least: 500, most: 60_000 },
  axleFrontKg: { least: 200, most: 30_000 },
  axleRearKg: { least: 200, most: 30_000 },
  unladenKg: { least: 300, most: 60_000 },
  emptyFrontKg: { least: 100, most: 30_000 },
  emptyRearKg: { least: 100, most: 30_000 },
  rearClearanceM: { least: 0.02, most: 2 },
  bellyClearanceM: { least: 0.02, most: 2 },
  gasKg: { least: 0, most: 1000 },
} as const satisfies Readonly<Record<string, Bounds>>;

/** What a tape in the yard may read, and how far off it and a chalk mark may be. Metres; wider than any road is no circle of a wheel. */
export const YARD_BOUNDS = {
  rearWheelCircleM: { least: 0.5, most: 30 },
  tailOutM: { least: 0.02, most: 3 },
  tailAheadM: { least: -10, most: 10 },
  tapeOffM: { least: 0, most: 0.2 },
  chalkOffM: { least: 0, most: 0.2 },
} as const satisfies Readonly<Record<string, Bounds>>;

/** One figure of a card, by the name the form has for it. */
export type CardFigure = keyof typeof CARD_BOUNDS;

/** What the places of a card may be: seats, tanks and lockers. Metres rearwards from the front axle, litres, kilograms. */
export const PLACE_BOUNDS = {
  xM: { least: -5, most: 20 },
  capacityL: { least: 1, most: 2000 },
  limitKg: { least: 1, most: 2000 },
} as const satisfies Readonly<Record<string, Bounds>>;

/** More of a kind no motorhome has. */
export const PLACES_MAX = 30;
export const PLACE_NAME_LONGEST = 100;
export const CARD_NAME_LONGEST = 200;
export const NOTES_LONGEST = 4000;
