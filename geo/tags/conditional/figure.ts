import type { Figure } from '../../units/believed.ts';
import { readLength } from '../../units/read-length.ts';
import { readMass } from '../../units/read-mass.ts';
import { type Reading, type ReadingNote, unreadable } from '../../units/reading.ts';
import type { Property } from './conditional.ts';

interface Compared {
  /** kilograms, metres, or a count of axles */
  readonly figure: number;
  readonly notes: readonly ReadingNote[];
}

/** What a comparison's figure is held to: one that no limit has is no figure to compare with. */
const FIGURE_OF: Readonly<Record<Exclude<Property, 'axles'>, Figure>> = {
  length: 'length',
  height: 'height',
  width: 'width',
  weight: 'mass',
  weightrating: 'plateMass',
  emptyweight: 'unladenMass',
  axleload: 'axle',
};

function readCompared(property: Exclude<Property, 'axles'>, text: string): Reading {
  const of = FIGURE_OF[property];
  return of === 'length' || of === 'height' || of === 'width' ? readLength(text, of) : readMass(text, of);
}

function readCount(text: string) {
  return /^\d{1,2}$/.test(text)
    ? { kind: 'value' as const, value: Number(text), notes: [] }
    : unreadable('not a count of axles');
}

/** Reads the figure of a comparison in the property's unit; undefined when it cannot be read for certain. */
export function readFigure(property: Property, text: string): Compared | undefined {
  const given = text.trim();
  // a list of figures is no figure to compare with
  if (given.includes(';')) return undefined;
  const read = property === 'axles' ? readCount(given) : readCompared(property, given);
  return read.kind === 'value' ? { figure: read.value, notes: read.notes } : undefined;
}
