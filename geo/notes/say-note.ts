import { printKg, printLimitM } from '../units/print.ts';
import { clip, quote } from '../units/text.ts';
import type { NoteFields } from './note.ts';
import type { Lost } from './place-note.ts';

// How a note is told wherever it bears, and where it cannot be placed.

/** Of a long text so much stands in a sentence; the note itself is shown whole. */
const QUOTED_MOST = 160;

/** A figure of a note, metres or kilograms. */
export interface NotedFigure {
  readonly subject: 'height' | 'width' | 'mass';
  readonly value: number;
}

/** The figures of a note. */
export function figuresOf({ heightM, widthM, massKg }: NoteFields): NotedFigure[] {
  const all = [
    { subject: 'height' as const, value: heightM },
    { subject: 'width' as const, value: widthM },
    { subject: 'mass' as const, value: massKg },
  ];
  return all.flatMap(({ subject, value }) => (value === undefined ? [] : [{ subject, value }]));
}

/** `3.40 m (11'1")`, `3500 kg`: rounded down, as a limit is */
export function printFigure({ subject, value }: NotedFigure): string {
  return subject === 'mass' ? printKg(value, 'down') : printLimitM(value);
}

/** ` on 2026-05-01 (AB)`, as far as it is known. */
export function sayWhenWho({ seen, by }: NoteFields): string {
  const when = seen === undefined ? '' : ` on ${seen}`;
  return by === undefined ? when : `${when} (${clip(by, 12)})`;
}

/** `the firm measured 3.40 m (11'1") on 2026-05-01 (AB)`; a mass is read off a sign. */
export function sayMeasured(note: NoteFields, figure: NotedFigure): string {
  const how = figure.subject === 'mass' ? 'read' : 'measured';
  return `the firm ${how} ${printFigure(figure)}${sayWhenWho(note)}`;
}

/** `The firm noted on 2026-05-01 (AB): "Bent tree on the left."` */
export function sayNoted(note: NoteFields): string {
  return `The firm noted${sayWhenWho(note)}: ${quote(note.say, QUOTED_MOST)}`;
}

/** `The firm says that it has leave to drive here, noted on 2026-05-01 (AB): "Farmer agreed."` */
export function sayLeave(note: NoteFields): string {
  return `The firm says that it has leave to drive here, noted${sayWhenWho(note)}: ${quote(note.say, QUOTED_MOST)}`;
}

/** That a note beside the drive counts no more, why, and what to do. */
export function sayLost(note: NoteFields, lost: Lost): string {
  return `Your note ${quote(note.say)}${sayWhenWho(note)} is left out: ${whyLost(lost)}. Look at the place and note it anew.`;
}

function whyLost(lost: Lost): string {
  switch (lost.why) {
    case 'moved':
      return `its place has moved ${Math.round(lost.awayM)} m on the map, more than a note follows`;
    case 'no road':
      return 'its road is not on the map there any more';
    case 'other road':
      return 'the road it was made on is not there any more, or goes by another name and number';
  }
}
