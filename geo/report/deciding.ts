import { sizeIn, trueMinus, type Units } from '../units/in-units.ts';
import { printKg, type Rounding } from '../units/print.ts';
import { massSum, sizeSumIn } from '../units/sum.ts';
import type { Finding, Subject } from './report.ts';

/** limit − vehicle = spare in words, every part rounded against the driver. */
export interface Sum {
  readonly limit: string;
  readonly vehicle: string;
  readonly what: string;
  /** with its sign */
  readonly spare: string;
  readonly over: boolean;
  /** the spare without its sign, for a row */
  readonly short: string;
}

/** What a finding turns on, the number that decides first. */
type Deciding =
  | { readonly kind: 'sum'; readonly sum: Sum }
  /** a limit that could not be counted with: the text as mapped */
  | { readonly kind: 'text'; readonly text: string }
  /** how far it reaches, metres */
  | { readonly kind: 'reach'; readonly lengthM: number }
  /** a size or a mass decides, and none is mapped */
  | { readonly kind: 'no figure' }
  /** the place alone */
  | { readonly kind: 'place' };

const NEEDS_FIGURE: ReadonlySet<Subject> = new Set(['height', 'width', 'length', 'mass', 'axle']);
/** A finding that reaches less far is a place. Metres. */
const LONG_M = 30;

/** What of a finding is shown large beside it. */
export function decidingOf(finding: Finding, units: Units): Deciding {
  const sum = sumOf(finding, units);
  if (sum) return { kind: 'sum', sum };
  if (finding.limit) return { kind: 'text', text: limitText(finding.limit) };
  const lengthM = finding.toM - finding.fromM;
  // many guesses may be told as one: its sentence says how much of the span they are
  if (lengthM > LONG_M && finding.kind !== 'guessed') return { kind: 'reach', lengthM };
  return { kind: NEEDS_FIGURE.has(finding.subject) ? 'no figure' : 'place' };
}

/** As mapped; a slope as it is driven, for the map may draw its road the other way round. */
function limitText({ value, unit, asMapped }: NonNullable<Finding['limit']>): string {
  return unit === '%' ? `${Math.abs(value)} % ${value > 0 ? 'up' : 'down'}` : asMapped;
}

/** The figures of a finding's sum; `neededM` or kilograms as the rule compared them: a height with its measuring allowance. */
interface Figures {
  readonly limit: number;
  readonly unit: 'm' | 'kg' | 'deg' | '%';
  readonly needed: number;
  readonly spare: number;
}

function figuresOf({ limit, vehicle, spare }: Finding): Figures | undefined {
  if (!limit || !vehicle || spare === undefined) return undefined;
  return { limit: limit.value, unit: limit.unit, needed: limit.value - spare, spare };
}

/** @returns undefined where no figure decides */
export function sumOf(finding: Finding, units: Units): Sum | undefined {
  const figures = figuresOf(finding);
  const { vehicle } = finding;
  if (!figures || !vehicle) return undefined;
  const { unit, needed, spare } = figures;
  const print = (value: number, rounding: Rounding) => quantityIn(units, { value, unit }, rounding);
  const allowance = needed - vehicle.value;
  return {
    ...shownOf(units, figures),
    what:
      Math.abs(allowance) > 1e-6
        ? `${vehicle.what} ${print(vehicle.value, 'up')}, with ${print(allowance, 'up')} for measuring`
        : vehicle.what,
    over: spare < 0,
  };
}

/** The parts of a sum as they are shown: metres and kilograms add up as they stand. */
function shownOf(
  units: Units,
  { limit, unit, needed, spare }: Figures,
): Pick<Sum, 'limit' | 'vehicle' | 'spare' | 'short'> {
  if (unit === 'm' || unit === 'kg') {
    const sum = unit === 'm' ? sizeSumIn(units, { limit, needed }) : massSum({ limit, needed });
    return { limit: sum.limit, vehicle: sum.needed, spare: sum.spare, short: sum.short };
  }
  const print = (value: number, rounding: Rounding) => quantityIn(units, { value, unit }, rounding);
  return {
    limit: print(limit, 'down'),
    vehicle: print(needed, 'up'),
    spare: print(spare, 'down'),
    short: print(Math.abs(spare), spare < 0 ? 'up' : 'down'),
  };
}

function quantityIn(
  units: Units,
  { value, unit }: { value: number; unit: string },
  rounding: Rounding,
): string {
  if (unit === 'm') return sizeIn(units, value, rounding);
  if (unit === 'kg') return trueMinus(printKg(value, rounding));
  const rounded = rounding === 'down' ? Math.floor(value * 10 + 1e-6) : Math.ceil(value * 10 - 1e-6);
  return trueMinus(`${rounded / 10}${unit === 'deg' ? '°' : ` ${unit}`}`);
}

/** A drawing to scale that a finding's sum is shown in. Metres, kilograms. */
type ScaleFigure =
  | { readonly kind: 'height' | 'width' | 'length'; readonly limitM: number; readonly neededM: number }
  | {
      readonly kind: 'mass';
      readonly limitKg: number;
      readonly neededKg: number;
      /** the axle that alone stands on the scale, where one does */
      readonly axle: 'front' | 'rear' | undefined;
    };

const DRAWN_AS: Partial<Readonly<Record<Subject, 'height' | 'width' | 'length'>>> = {
  height: 'height',
  tunnel: 'height',
  width: 'width',
  barrier: 'width',
  length: 'length',
};

/** Which drawing shows a finding's sum: under a bridge, between posts, along a line, on a scale. */
export function scaleFigureOf(finding: Finding): ScaleFigure | undefined {
  const figures = figuresOf(finding);
  if (!figures || !(figures.limit > 0 && figures.needed > 0)) return undefined;
  const { limit, needed, unit } = figures;
  if (unit === 'kg') return { kind: 'mass', limitKg: limit, neededKg: needed, axle: finding.vehicle?.axle };
  const kind = unit === 'm' ? DRAWN_AS[finding.subject] : undefined;
  return kind && { kind, limitM: limit, neededM: needed };
}
