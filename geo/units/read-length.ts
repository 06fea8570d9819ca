import { append } from '../lists.ts';
import { believedLength, type Figure } from './believed.ts';
import { METRES_PER_FOOT, METRES_PER_INCH } from './exact.ts';
import { readList } from './read-list.ts';
import { NUMBER, readNumber } from './read-number.ts';
import { type Reading, type ReadingNote, unreadable } from './reading.ts';

/** Unit spellings, lower case: metres each, and whether it is the documented spelling. */
const UNITS: Readonly<Record<string, { readonly metres: number; readonly asDocumented: boolean }>> = {
  m: { metres: 1, asDocumented: true },
  metre: { metres: 1, asDocumented: false },
  metres: { metres: 1, asDocumented: false },
  meter: { metres: 1, asDocumented: false },
  meters: { metres: 1, asDocumented: false },
  mtr: { metres: 1, asDocumented: false },
  mtrs: { metres: 1, asDocumented: false },
  cm: { metres: 0.01, asDocumented: true },
  mm: { metres: 0.001, asDocumented: true },
  ft: { metres: METRES_PER_FOOT, asDocumented: true },
  foot: { metres: METRES_PER_FOOT, asDocumented: false },
  feet: { metres: METRES_PER_FOOT, asDocumented: false },
  in: { metres: METRES_PER_INCH, asDocumented: true },
  inch: { metres: METRES_PER_INCH, asDocumented: false },
  inches: { metres: METRES_PER_INCH, asDocumented: false },
};

const PLAIN = new RegExp(`^(${NUMBER})(\\s*)([a-z]*)\\.?$`, 'i');
const FEET_INCHES = new RegExp(
  `^(${NUMBER})(\\s*)('|ft\\.?|foot|feet)(?:(\\s*)(${NUMBER})(\\s*)("|in\\.?|inch|inches)?)?$`,
  'i',
);
const DOCUMENTED_FEET = /^\d+(\.\d+)?'(\d+(\.\d+)?")?$/;

/**
 * Reads the text of a height, width or length limit.
 * Metres when no unit is written; feet and inches as `12'6"`; every leniency taken is noted.
 * @param figure which of the map's figures this is: a value outside its range is not believed. Left out for what a person
 * types, which its field holds to a range
 * @returns metres, one of the words that stand for a figure, or why it cannot be read or believed
 */
export function readLength(text: string, figure?: Figure): Reading {
  return readList(text, (part) => {
    const reading = readOneLength(part);
    return figure === undefined ? reading : believedLength(reading, part, figure);
  });
}

function readOneLength(text: string): Reading {
  const plainMarks = text
    .replace(/[’‘′´`]/g, "'")
    .replace(/[”“″]/g, '"')
    .replace(/''/g, '"');
  const notes: ReadingNote[] = plainMarks === text ? [] : ['typographic-marks'];
  const feet = FEET_INCHES.exec(plainMarks);
  if (feet !== null) return readFeet(plainMarks, feet, notes);
  const plain = PLAIN.exec(plainMarks);
  if (plain === null) return unreadable(`"${text}" is not a length`);
  const [, digits = '', space = '', unit = ''] = plain;
  const number = readNumber(digits);
  if (!number.ok) return unreadable(number.reason);
  append(notes, number.notes);
  if (unit === '') return { kind: 'value', value: number.value, notes };
  const lower = unit.toLowerCase();
  const known = Object.hasOwn(UNITS, lower) ? UNITS[lower] : undefined;
  if (known === undefined) return unreadable(`"${unit}" is not a unit of length`);
  if (space === '') notes.push('no-space-before-unit');
  if (!known.asDocumented || unit !== lower) notes.push('unit-spelling');
  return { kind: 'value', value: number.value * known.metres, notes };
}

function readFeet(text: string, parts: RegExpExecArray, notes: ReadingNote[]): Reading {
  const [, feetDigits = '', , footMark = '', , inchDigits, , inchMark] = parts;
  const feet = readNumber(feetDigits);
  if (!feet.ok) return unreadable(feet.reason);
  append(notes, feet.notes);
  if (!DOCUMENTED_FEET.test(text) && !(inchDigits === undefined && / ft$/.test(text)))
    notes.push(
      footMark === "'" && inchDigits !== undefined && inchMark === undefined
        ? 'missing-inch-mark'
        : 'spaced-feet-and-inches',
    );
  if (inchDigits === undefined) return { kind: 'value', value: feet.value * METRES_PER_FOOT, notes };
  if (!Number.isInteger(feet.value)) return unreadable('a fraction of a foot and inches beside it');
  const inches = readInches(inchDigits);
  if (typeof inches === 'string') return unreadable(inches);
  // counted in inches first, so that 12'6" is exactly 150 of them
  return { kind: 'value', value: (feet.value * 12 + inches) * METRES_PER_INCH, notes };
}

function readInches(digits: string): number | string {
  if (digits.includes(',')) return 'a comma among inches';
  const inches = Number(digits);
  return inches < 12 ? inches : `${digits} inches are a foot or more`;
}
