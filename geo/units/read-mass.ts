import { believedMass, type Figure } from './believed.ts';
import { KG_PER_POUND } from './exact.ts';
import { readList } from './read-list.ts';
import { NUMBER, readNumber } from './read-number.ts';
import { type Reading, type ReadingNote, unreadable } from './reading.ts';

interface MassUnit {
  readonly kilograms: number;
  readonly note?: ReadingNote;
}

/**
 * Unit spellings, lower case. `st` is the short ton, `lt` the long ton, `cwt` the long hundredweight.
 * "tons" and the sign's own "T" are read as tonnes and noted.
 */
const UNITS: Readonly<Record<string, MassUnit>> = {
  t: { kilograms: 1000 },
  to: { kilograms: 1000, note: 'unit-spelling' },
  tonne: { kilograms: 1000, note: 'unit-spelling' },
  tonnes: { kilograms: 1000, note: 'unit-spelling' },
  ton: { kilograms: 1000, note: 'tons-as-tonnes' },
  tons: { kilograms: 1000, note: 'tons-as-tonnes' },
  kg: { kilograms: 1 },
  kgs: { kilograms: 1, note: 'unit-spelling' },
  lbs: { kilograms: KG_PER_POUND },
  lb: { kilograms: KG_PER_POUND, note: 'unit-spelling' },
  st: { kilograms: 2000 * KG_PER_POUND },
  cwt: { kilograms: 112 * KG_PER_POUND, note: 'unit-spelling' },
  lt: { kilograms: 2240 * KG_PER_POUND, note: 'unit-spelling' },
};

const MASS = new RegExp(`^(${NUMBER})(\\s*)([a-z]*)\\.?$`, 'i');

/** No road is limited to 200 t: a bare figure from here on was meant in kilograms or pounds, and nobody says which. */
const BARE_TOO_LARGE_T = 200;

/**
 * Reads the text of a mass or axle limit. Tonnes when no unit is written; every leniency taken is noted.
 * @param figure which of the map's figures this is: a value outside its range is not believed. Left out, the text
 * alone is read, and a bare figure that can be no tonnes is unreadable
 * @returns kilograms, one of the words that stand for a figure, or why it cannot be read or believed
 */
export function readMass(text: string, figure?: Figure): Reading {
  if (figure === undefined) return readList(text, (part) => readOneMass(part, 'no bare kilograms'));
  return readList(text, (part) => believedMass(readOneMass(part, 'any bare figure'), part, figure));
}

/** @param bare whether a bare figure that can be no tonnes is given all the same, for others to doubt */
function readOneMass(text: string, bare: 'any bare figure' | 'no bare kilograms'): Reading {
  const match = MASS.exec(text);
  if (match === null) return unreadable(`"${text}" is not a mass`);
  const [, digits = '', space = '', written = ''] = match;
  const number = readNumber(digits);
  if (!number.ok) return unreadable(number.reason);
  const notes: ReadingNote[] = [...number.notes];
  if (written === '') {
    if (bare === 'no bare kilograms' && number.value >= BARE_TOO_LARGE_T)
      return unreadable(`${digits} without a unit may be kilograms or pounds, not tonnes`);
    return { kind: 'value', value: number.value * 1000, notes };
  }
  const lower = written.toLowerCase();
  const unit = Object.hasOwn(UNITS, lower) ? UNITS[lower] : undefined;
  if (unit === undefined) return unreadable(`"${written}" is not a unit of mass`);
  if (unit.kilograms <= 1 && /\.\d{3}$/.test(digits))
    return unreadable(`"${digits}" may be thousands or decimals`);
  if (space === '') notes.push('no-space-before-unit');
  if (unit.note !== undefined) notes.push(unit.note);
  else if (written !== lower) notes.push('unit-spelling');
  return { kind: 'value', value: number.value * unit.kilograms, notes };
}
