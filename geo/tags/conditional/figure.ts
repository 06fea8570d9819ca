import { readLength } from '../../units/read-length.ts';
import { readMass } from '../../units/read-mass.ts';
import { type ReadingNote, unreadable } from '../../units/reading.ts';
import type { Property } from './conditional.ts';

interface Figure {
  /** kilograms, metres, or a count of axles */
  readonly figure: number;
  readonly notes: readonly ReadingNote[];
}

const LENGTHS: ReadonlySet<Property> = new Set(['length', 'height', 'width']);

function readCount(text: string) {
  return /^\d{1,2}$/.test(text)
    ? { kind: 'value' as const, value: Number(text), notes: [] }
    : unreadable('not a count of axles');
}

/** Reads the figure of a comparison in the property's unit; undefined when it cannot be read for certain. */
export function readFigure(property: Property, text: string): Figure | undefined {
  const given = text.trim();
  // a list of figures is no figure to compare with
  if (given.includes(';')) return undefined;
  const read =
    property === 'axles' ? readCount(given) : LENGTHS.has(property) ? readLength(given) : readMass(given);
  return read.kind === 'value' ? { figure: read.value, notes: read.notes } : undefined;
}
