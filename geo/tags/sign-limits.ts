import { readLength } from '../units/read-length.ts';
import { readMass } from '../units/read-mass.ts';
import { type Driven, directionOf } from './driven.ts';
import { isOtherDirection } from './key-words.ts';
import { readSignCode, type SignQuantity } from './sign-codes.ts';

/** A limit that a mapped sign or hazard tells of. */
export interface SignLimit {
  /** undefined: a bare figure in metres */
  readonly quantity: SignQuantity | undefined;
  readonly goods: boolean;
  /** metres or kilograms; undefined where no figure stands there or it cannot be read */
  readonly value: number | undefined;
}

export interface SignTag {
  readonly key: string;
  readonly text: string;
  readonly limits: readonly SignLimit[];
}

/** What is said of signs in plain words, the first that fits. */
const WORDS: readonly (readonly [RegExp, SignQuantity])[] = [
  [/height|headroom|clearance|overhead|low[ _-]?(bridge|arch)/i, 'height'],
  [/width/i, 'width'],
  [/length/i, 'length'],
  [/axle/i, 'axle'],
  [/weight|tonnage|weak[ _-]?bridge/i, 'mass'],
];

const FEET = /\d+\s*(?:'|ft|feet|foot)\s*(?:\d+\s*(?:"|in\b)?)?/i;
const FIGURE = /\d+(?:[.,]\d+)?\s*(?:metres?|meters?|m|tonnes?|tons?|t|kg|cm)(?![a-z])/i;

/** Signs and hazards mapped on a way or a node, for the driven direction, that limit sizes or masses. */
export function signLimits(driven: Driven, country: string | undefined): SignTag[] {
  const direction = directionOf(driven);
  return Object.entries(driven.tags).flatMap(([key, text]) => {
    const [first, ...rest] = key.split(':');
    if (first !== 'traffic_sign' && first !== 'hazard') return [];
    if (!rest.every((part) => DIRECTIONS.has(part)) || rest.some((part) => isOtherDirection(part, direction)))
      return [];
    const limits = text.split(OUTSIDE_BRACKETS.pieces).flatMap((piece) => limitsOf(piece.trim(), country));
    return limits.length === 0 ? [] : [{ key, text, limits }];
  });
}

const DIRECTIONS = new Set(['forward', 'backward', 'both', 'both_ways', '2', 'id']);
const OUTSIDE_BRACKETS = { pieces: /;(?![^[]*\])/, codes: /,(?![^[]*\])/ };
/** `DE:265[3.8]`, `265`, `B-16`, `C19`; but not a figure with its unit. */
const CODE = /^(?:([A-Z]{2}):\s*)?(?:§\s*)?(?:[A-Z]{1,3}[-. ]?)?\d/;

function limitsOf(piece: string, country: string | undefined): SignLimit[] {
  const startsWithFigure = new RegExp(`^(?:${FIGURE.source}|${FEET.source})`, 'i').test(piece);
  if (startsWithFigure || !CODE.test(piece)) return limitsInWords(piece);
  let of = country;
  return piece.split(OUTSIDE_BRACKETS.codes).flatMap((part): SignLimit[] => {
    const named = /^\s*([A-Z]{2}):/.exec(part)?.[1];
    of = named ?? of;
    const meaning = readSignCode(of, part.replace(/^\s*([A-Z]{2}:)?\s*/, ''));
    if (meaning === undefined) return [];
    const { quantity, goods, rest } = meaning;
    return [{ quantity, goods, value: figureOf(rest.replace(/^[[\s:-]+|[\]\s]+$/g, ''), quantity) }];
  });
}

function limitsInWords(text: string): SignLimit[] {
  const quantity = WORDS.find(([words]) => words.test(text))?.[1];
  const figure = (FEET.exec(text) ?? FIGURE.exec(text))?.[0];
  if (quantity !== undefined)
    return [{ quantity, goods: false, value: figure === undefined ? undefined : figureOf(figure, quantity) }];
  if (figure === undefined) return [];
  const isMass = /(t|tonnes?|tons?|kg)$/i.test(figure) && !/(ft|feet|foot)/i.test(figure);
  return [
    isMass
      ? { quantity: 'mass', goods: false, value: figureOf(figure, 'mass') }
      : { quantity: undefined, goods: false, value: figureOf(figure, 'height') },
  ];
}

function figureOf(text: string, quantity: SignQuantity): number | undefined {
  const reading =
    quantity === 'mass' || quantity === 'axle' ? readMass(text, quantity) : readLength(text, quantity);
  return reading.kind === 'value' ? reading.value : undefined;
}
