import { lookUp } from '../../country/look-up.ts';
import { itemAt, smallest } from '../../lists.ts';
import { isBelieved } from '../../units/believed.ts';
import { KMH_PER_KNOT, KMH_PER_MPH } from '../../units/exact.ts';

/** The kind of place or road that a limit is implied by. */
export type SpeedContext =
  | 'urban'
  | 'rural'
  | 'single'
  | 'dual'
  | 'expressway'
  | 'motorway'
  | 'living_street'
  /** the general limit of whatever road it is ("national") */
  | 'national';

/**
 * What the text of a speed limit says.
 *
 * - `kmh`: a figure (several figures: the lowest)
 * - `none`: expressly no limit
 * - `walk`: walking pace
 * - `implied`: the general limit of a kind of road; `country` where the text names it
 * - `varies`: shown on signs that change
 * - `unreadable`: never to be taken for "no limit"
 */
export type SpeedRead =
  | { readonly kind: 'kmh'; readonly kmh: number }
  | { readonly kind: 'none' | 'walk' | 'varies' | 'unreadable' }
  | { readonly kind: 'implied'; readonly context: SpeedContext; readonly country?: string };

const FIGURE = /^(\d+(?:[.,]\d+)?)\s*(km\/h|kmh|kph|mph|knots)?$/i;
const PREFIXED = /^([A-Z]{2})(?:-[A-Z0-9]+)?:(.+)$/i;
const ZONE = /^(?:zone:?)?(\d+)$/i;

const CONTEXTS: Readonly<Record<string, SpeedContext>> = {
  urban: 'urban',
  nsl_restricted: 'urban',
  restricted: 'urban',
  rural: 'rural',
  nsl_single: 'single',
  single: 'single',
  nsl_dual: 'dual',
  dual: 'dual',
  nsl: 'national',
  national: 'national',
  expressway: 'expressway',
  motorroad: 'expressway',
  trunk: 'expressway',
  motorway: 'motorway',
  living_street: 'living_street',
};

/** Reads the value of `maxspeed` and of the keys that say where a limit comes from. Any text; never throws. */
export function readSpeed(text: string): SpeedRead {
  const parts = text.split(';').map((part) => readOne(part.trim()));
  const [first] = parts;
  if (parts.length === 1 && first) return first;
  // several values: all must be figures, and the lowest is the one that is surely kept
  const figures = parts.map((part) => (part.kind === 'kmh' ? part.kmh : Number.NaN));
  const lowest = smallest(figures);
  return Number.isNaN(lowest) ? { kind: 'unreadable' } : { kind: 'kmh', kmh: lowest };
}

function readOne(text: string): SpeedRead {
  const figure = FIGURE.exec(text);
  if (figure) return figureRead(Number(itemAt(figure, 1).replace(',', '.')), unitKmh(figure[2]));
  const word = text.toLowerCase();
  if (word === 'none' || word === 'unlimited') return { kind: 'none' };
  if (word === 'walk' || word === 'walking') return { kind: 'walk' };
  if (word === 'signals' || word === 'variable') return { kind: 'varies' };
  const prefixed = PREFIXED.exec(text);
  if (prefixed) return readPrefixed(itemAt(prefixed, 1).toUpperCase(), itemAt(prefixed, 2).toLowerCase());
  const context = lookUp(CONTEXTS, word);
  return context ? { kind: 'implied', context } : { kind: 'unreadable' };
}

function readPrefixed(prefix: string, rest: string): SpeedRead {
  const country = prefix === 'UK' ? 'GB' : prefix;
  const zone = ZONE.exec(rest);
  if (zone) return figureRead(Number(zone[1]), country === 'GB' || country === 'US' ? KMH_PER_MPH : 1);
  if (rest === 'walk' || rest === 'pedestrian_zone') return { kind: 'walk' };
  if (rest === 'bicycle_road' || rest === 'cyclestreet') return { kind: 'kmh', kmh: 30 };
  const context = lookUp(CONTEXTS, rest);
  return context ? { kind: 'implied', context, country } : { kind: 'unreadable' };
}

/** Zero, and figures no road has, are not believed. */
function figureRead(value: number, unit: number): SpeedRead {
  const kmh = value * unit;
  return isBelieved('speedKmh', kmh) ? { kind: 'kmh', kmh } : { kind: 'unreadable' };
}

function unitKmh(unit: string | undefined): number {
  if (unit?.toLowerCase() === 'mph') return KMH_PER_MPH;
  if (unit?.toLowerCase() === 'knots') return KMH_PER_KNOT;
  return 1;
}
