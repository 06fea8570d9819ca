import { randomBytes } from 'node:crypto';
import { given } from '../../../geo/given.ts';
import { bodyFault } from '../../../geo/library/record.ts';
import { BY_MOST, SAY_MOST } from '../../../geo/notes/bounds.ts';
import type { NoteFields } from '../../../geo/notes/note.ts';
import { roadAt } from '../../../geo/notes/place-note.ts';
import { sayUnplaced } from '../../../geo/notes/say-unplaced.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import { readOnShelf } from '../../services/shelf/roads-on-shelf.ts';
import { shelfFolder } from '../../services/shelf/where-shelf.ts';
import { readAnswers } from '../../services/yard/note-answers.ts';
import { jsonText } from '../json-text.ts';
import { readAt } from '../read-at.ts';
import { readWords, USAGE_HINT, type WordsRead } from '../read-words.ts';
import type { Terminal } from '../terminal.ts';
import type { YardCommand } from './command.ts';
import { printNote } from './print-note.ts';

const FIGURES = {
  height: { field: 'heightM', wants: 'metres from 0.5 to 20, such as 3.4' },
  width: { field: 'widthM', wants: 'metres from 0.5 to 50, such as 2.4' },
  mass: { field: 'massKg', wants: 'kilograms from 100 to 200000, such as 3500' },
} as const;

/** `yard note add`: keeps what the firm knows of a place. */
export const noteAdd: YardCommand = async (words, terminal, library) => {
  const read = readWords(words, {
    once: ['at', 'say', 'height', 'width', 'mass', 'answers', 'seen', 'until', 'by'],
    signed: ['at'],
    flags: ['leave', 'json'],
  });
  if (!read.ok) return read;
  const fields = readFields(read.value);
  if (!fields.ok) return fields;
  const typed = read.value.one('answers');
  const answered = typed === undefined ? undefined : await readAnswers(typed, library, terminal.dataFolder);
  if (answered?.ok === false) return answered;
  const placed = await onRoadOfShelf(fields.value.at, terminal);
  const body = { ...fields.value, ...placed.on, ...given({ answers: answered?.value.answers }) };
  const fault = bodyFault('note', body);
  if (fault)
    return fail('usage', `The note cannot be kept: ${sayFaultOf(String(fault.path[0]))} ${USAGE_HINT}`);
  const id = `note-${randomBytes(4).toString('hex')}`;
  const put = await library.put({ kind: 'note', id, body });
  if (!put.ok) return put;
  const unknown = answered?.value.say;
  const says = [unknown, placed.say].flatMap((say) => (say === undefined ? [] : [`  ${say}\n`]));
  const text = read.value.flag('json')
    ? jsonText({ note: { id, ...body }, ...given({ say: unknown }) })
    : `${printNote(put.value)}${says.join('')}`;
  return ok({ text });
};

/** The road of the shelf's maps that a note lies on, so that it follows its road; else a sentence. */
async function onRoadOfShelf(
  at: NoteFields['at'],
  { dataFolder, signal }: Terminal,
): Promise<{ readonly on?: Pick<NoteFields, 'osm' | 'road'>; readonly say?: string }> {
  const line = { lat: Float64Array.of(at.lat, at.lat), lon: Float64Array.of(at.lon, at.lon) };
  const found = await readOnShelf(shelfFolder(dataFolder), signal, async (read) =>
    ok(roadAt(at, await read({ segments: [line] }, undefined))),
  );
  // what the shelf cannot tell the next check will: the note is kept all the same
  if (!found.ok) return { say: sayUnplaced('no-map') };
  return found.value === undefined ? { say: sayUnplaced('no-road') } : { on: found.value };
}

function readFields({ one, flag }: WordsRead) {
  const [at, say] = [one('at'), one('say')];
  const missing = [
    ...(at === undefined ? ['--at LAT,LON'] : []),
    ...(say === undefined || say.trim() === '' ? ['--say TEXT'] : []),
  ];
  if (at === undefined || say === undefined || missing.length > 0)
    return fail('usage', `Missing: ${missing.join(', ')}. ${USAGE_HINT}`);
  const place = readAt(at);
  if (!place.ok) return place;
  const figures: { heightM?: number; widthM?: number; massKg?: number } = {};
  for (const option of ['height', 'width', 'mass'] as const) {
    const figure = readFigure(option, one(option));
    if (!figure.ok) return figure;
    if (figure.value !== undefined) figures[FIGURES[option].field] = figure.value;
  }
  const days = [readDay('seen', one('seen')), readDay('until', one('until'))] as const;
  for (const day of days) if (!day.ok) return day;
  const [seen, until] = [one('seen'), one('until')];
  if (seen !== undefined && until !== undefined && until < seen)
    return fail(
      'usage',
      `--until ${until} is before --seen ${seen}: the note would never hold. ${USAGE_HINT}`,
    );
  if (flag('leave') && one('answers') === undefined)
    return fail(
      'usage',
      `--leave settles a finding that asks for leave: name it with --answers FINDING_ID. ${USAGE_HINT}`,
    );
  return ok({
    at: place.value,
    say: say.trim(),
    ...figures,
    ...given({
      seen,
      until,
      by: one('by'),
      leave: flag('leave') ? (true as const) : undefined,
    }),
  });
}

function readFigure(option: keyof typeof FIGURES, typed: string | undefined): Result<number | undefined> {
  if (typed === undefined) return ok(undefined);
  const { field, wants } = FIGURES[option];
  const value = /^\d{1,7}(?:\.\d{1,6})?$/.test(typed) ? Number(typed) : Number.NaN;
  const note = { at: { lat: 0, lon: 0 }, say: '.', [field]: value };
  if (Number.isNaN(value) || bodyFault('note', note))
    return fail('usage', `--${option} ${quote(typed)} cannot be used: it wants ${wants}. ${USAGE_HINT}`);
  return ok(value);
}

function readDay(option: string, typed: string | undefined): Result<undefined> {
  if (typed === undefined || !bodyFault('note', { at: { lat: 0, lon: 0 }, say: '.', seen: typed }))
    return ok(undefined);
  return fail('usage', `--${option} ${quote(typed)} is not a day such as 2027-06-12. ${USAGE_HINT}`);
}

/** What stays to be refused once every figure has been read. */
function sayFaultOf(field: string): string {
  if (field === 'by') return `--by is 1 to ${BY_MOST} characters, the initials of who saw it.`;
  if (field === 'say') return `--say has 1 to ${SAY_MOST} characters.`;
  return `--${field} cannot be used.`;
}
