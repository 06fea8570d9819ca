import { KG_PER_POUND, METRES_PER_FOOT } from './exact.ts';
import { printMetres, printTonnes } from './print.ts';
import type { Reading } from './reading.ts';

/** A kind of figure that maps give about a road. */
export type Figure = keyof typeof BELIEVED;

interface Range {
  readonly least: number;
  readonly most: number;
}

interface Belief extends Range {
  /** what it usually is: a figure in another unit is taken for likely only within this */
  readonly usual: Range;
  /** what it is, as the end of "is not believed as" */
  readonly as: string;
}

const MASS = { least: 500, most: 150_000, usual: { least: 1000, most: 60_000 }, as: 'a mass limit' };

/**
 * What each figure may be, the ends included: metres and kilograms. A figure outside is a slip or another unit, and
 * proves nothing. Common practice, no source; the figures seen on real maps lie within. Layers are no quantity but an
 * order, and have no range; a slope's stands here in per cent, a speed's in km/h.
 */
export const BELIEVED = {
  height: { least: 1.5, most: 10, usual: { least: 1.9, most: 6 }, as: 'the height of a road' },
  width: { least: 0.5, most: 12, usual: { least: 1.5, most: 4.5 }, as: 'a width limit' },
  length: { least: 2, most: 60, usual: { least: 5, most: 30 }, as: 'a length limit' },
  mass: MASS,
  plateMass: MASS,
  unladenMass: MASS,
  axle: { least: 300, most: 30_000, usual: { least: 1000, most: 16_000 }, as: 'an axle limit' },
  bogie: { least: 500, most: 60_000, usual: { least: 1000, most: 30_000 }, as: 'a bogie limit' },
  carriageway: { least: 0.3, most: 60, usual: { least: 2, most: 20 }, as: 'the width of a road' },
  gap: { least: 0.05, most: 40, usual: { least: 1.5, most: 8 }, as: 'the width of a way through' },
  lane: { least: 1, most: 8, usual: { least: 2, most: 6 }, as: 'the width of a lane' },
  depth: { least: 0.01, most: 2, usual: { least: 0.05, most: 1.5 }, as: 'the depth of a ford' },
  underside: { least: 0, most: 150, usual: { least: 2, most: 20 }, as: 'the height of an underside' },
  circle: { least: 5, most: 80, usual: { least: 8, most: 40 }, as: 'the width of a turning circle' },
  inclinePercent: { least: -45, most: 45, usual: { least: -30, most: 30 }, as: 'a slope' },
  speedKmh: { least: 1, most: 200, usual: { least: 5, most: 130 }, as: 'a speed limit' },
} as const satisfies Readonly<Record<string, Belief>>;

/** Whether a figure may be what the map says it is. */
export function isBelieved(of: Figure, value: number): boolean {
  const { least, most } = BELIEVED[of];
  return value >= least && value <= most;
}

/** Units a bare figure may have been meant in: metres or kilograms each. */
const MEANT_LENGTHS = [
  { unit: 'centimetres', each: 0.01 },
  { unit: 'millimetres', each: 0.001 },
  { unit: 'feet', each: METRES_PER_FOOT },
] as const;
const MEANT_MASSES = [
  { unit: 'kilograms', each: 1 },
  { unit: 'pounds', each: KG_PER_POUND },
] as const;

const BARE = /^[\d.,]+$/;

/** The reading of a length as it stands, where it may be one; else why it is not believed, and what was likely meant. */
export function believedLength(reading: Reading, text: string, of: Figure): Reading {
  if (reading.kind !== 'value' || isBelieved(of, reading.value)) return reading;
  const likely = BARE.test(text)
    ? MEANT_LENGTHS.filter(({ each }) => isUsual(of, reading.value * each)).map(
        ({ unit, each }): Likely => ({ unit, is: printMetres(reading.value * each) }),
      )
    : [];
  return notBelieved(printMetres(reading.value), of, likely);
}

/** The same for a mass. */
export function believedMass(reading: Reading, text: string, of: Figure): Reading {
  if (reading.kind !== 'value' || isBelieved(of, reading.value)) return reading;
  const bare = reading.value / 1000;
  const likely = BARE.test(text)
    ? MEANT_MASSES.filter(({ each }) => isUsual(of, bare * each)).map(
        ({ unit, each }): Likely => ({ unit, is: printTonnes(bare * each) }),
      )
    : [];
  return notBelieved(printTonnes(reading.value), of, likely);
}

function isUsual(of: Figure, value: number): boolean {
  const { least, most } = BELIEVED[of].usual;
  return value >= least && value <= most;
}

/** What a bare figure comes to in another unit. */
interface Likely {
  readonly unit: string;
  readonly is: string;
}

/** @param likely each other unit that fits: what it comes to is said where only one does */
function notBelieved(value: string, of: Figure, likely: readonly Likely[]): Reading {
  const reason = `${value} is not believed as ${BELIEVED[of].as}`;
  const [only, second] = likely;
  if (only === undefined) return { kind: 'not believed', reason };
  const meant =
    second === undefined
      ? `${only.is} if ${only.unit} are meant`
      : `${likely.map(({ unit }) => unit).join(' or ')} may be meant`;
  return { kind: 'not believed', reason: `${reason}; ${meant}` };
}
