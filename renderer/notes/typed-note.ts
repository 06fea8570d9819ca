import { given } from '../../geo/given.ts';
import { NOTE_FIGURES } from '../../geo/notes/bounds.ts';
import type { NoteFields } from '../../geo/notes/note.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import { lengthEntry } from '../../geo/units/entry-text.ts';
import { printKg, printMetres } from '../../geo/units/print.ts';
import { readEntryLength, readEntryMass } from '../../geo/units/read-entry.ts';
import { settings } from '../state/kept.ts';

/** A note as it stands in its fields. */
export interface Typed {
  readonly height: string;
  readonly width: string;
  readonly mass: string;
  readonly say: string;
  readonly seen: string;
  readonly until: string;
  readonly by: string;
  readonly headingDeg: number | undefined;
  readonly leave: boolean;
}

export function typedOf(fields: Partial<NoteFields>): Typed {
  const {
    heightM,
    widthM,
    massKg,
    say = '',
    seen = '',
    until = '',
    by = '',
    headingDeg,
    leave = false,
  } = fields;
  const inFeet = settings.peek().units === 'imperial';
  const length = (m: number | undefined) => (m === undefined ? '' : lengthEntry(m, { inFeet }));
  const mass = massKg === undefined ? '' : String(massKg);
  return { height: length(heightM), width: length(widthM), mass, say, seen, until, by, headingDeg, leave };
}

/** Words for a figure that comes without any. */
const MEASURED = 'Measured there.';

/** The note that was typed, on the place and road it is about; else what is wrong with it. */
export function readNote(
  typed: Typed,
  about: Partial<NoteFields> & Pick<NoteFields, 'at'>,
): Result<NoteFields> {
  const heightM = readFigure('heightM', typed.height);
  if (heightM?.ok === false) return heightM;
  const widthM = readFigure('widthM', typed.width);
  if (widthM?.ok === false) return widthM;
  const massKg = readFigure('massKg', typed.mass);
  if (massKg?.ok === false) return massKg;
  const figures = given({ heightM: heightM?.value, widthM: widthM?.value, massKg: massKg?.value });
  const words = typed.say.trim();
  if (typed.leave && words === '')
    return fail('note', 'Write who gave you leave to drive there, and for what.');
  if (words === '' && Object.keys(figures).length === 0)
    return fail('note', 'Write what you measured, or what whoever drives there should know.');
  const { at, osm, road, answers } = about;
  const { seen, until, by, headingDeg } = typed;
  return ok({
    at,
    say: words || MEASURED,
    ...figures,
    ...given({ osm, road, answers, headingDeg, leave: typed.leave ? (true as const) : undefined }),
    ...given({ seen: seen || undefined, until: until || undefined, by: by.trim() || undefined }),
  });
}

const FIGURES = {
  heightM: { name: 'height', read: readEntryLength, print: (m: number) => printMetres(m) },
  widthM: { name: 'width', read: readEntryLength, print: (m: number) => printMetres(m) },
  massKg: { name: 'weight', read: readEntryMass, print: (kg: number) => printKg(kg) },
};

/** @returns undefined where nothing is typed */
function readFigure(of: keyof typeof FIGURES, text: string): Result<number> | undefined {
  if (text.trim() === '') return undefined;
  const { name, read, print } = FIGURES[of];
  const figure = read(text);
  if (!figure.ok) return figure;
  const { least, most } = NOTE_FIGURES[of];
  if (figure.value >= least && figure.value <= most) return ok(figure.value);
  return fail(
    'note',
    `A ${name} of ${print(figure.value)} cannot be right: it lies between ${print(least)} and ${print(most)}.`,
  );
}
