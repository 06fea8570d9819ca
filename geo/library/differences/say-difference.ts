import { dayInWords } from '../../clock/print-dates.ts';
import type { Span } from '../../drive/drive.ts';
import { LEVEL_WORD } from '../../report/level.ts';
import { namePlaceInLine, nameSubject } from '../../report/name-place.ts';
import type { Finding } from '../../report/report.ts';
import { distanceIn, lengthIn, type Units } from '../../units/in-units.ts';
import { clip, counted } from '../../units/text.ts';
import type { Road } from './roads-changed.ts';

export function sayNew(finding: Finding, units: Units): string {
  const since = finding.note === undefined ? 'Not there before' : 'By the firm’s own note, not there before';
  return `${since}. ${namePlaceInLine(finding, units)}.`;
}

/** @param hidden findings of before that lie there: nobody knows of them now */
export function sayOffTheMap(span: Span, hidden: number, units: Units): string {
  const where = `${capitalFrom(span, units)} the map has no road now`;
  if (hidden === 0) return `${where}; before it had.`;
  return `${where}; before it had, with ${counted(hidden, 'finding')} there that may still hold.`;
}

/** @param setBack the map is of older data than before: what it lacks may stand there all the same */
export function sayGone(finding: Finding, { units, setBack }: { units: Units; setBack: boolean }): string {
  const why = isNoted(finding)
    ? 'The firm’s own note no longer says so: it has ended, was changed, or finds its road no more'
    : setBack
      ? 'The map on the shelf is older than before and does not have this; it may well be there'
      : 'No longer on the map';
  return `${why}. ${namePlaceInLine(finding, units)}.`;
}

export function sayChanged(was: Finding, now: Finding, units: Units): string {
  return `Changed. ${namePlaceInLine(now, units)}. Before: ${sideOf(was)}; now: ${sideOf(now)}.`;
}

/** The firm's note alone makes it: of a mapped limit that was measured too, the map has tags. */
function isNoted({ note, tags }: Finding): boolean {
  return note !== undefined && Object.keys(tags).length === 0;
}

/** A figure or a road where there was none. @param now what it comes to, where it is still worth telling */
export function sayClosed(was: Finding, now: Finding | undefined, units: Units): string {
  if (now?.note !== undefined)
    return `Settled by the firm’s own note, open before. ${namePlaceInLine(now, units)}.`;
  if (now !== undefined) return `Mapped now, open before. ${namePlaceInLine(now, units)}.`;
  const settled =
    was.subject === 'map'
      ? 'The map is whole there now; what it has there is told by itself'
      : 'The map tells it now, and by itself it does not stop the vehicle';
  return `No longer open: ${namePlaceInLine(was, units)}. ${settled}.`;
}

export function sayRoadMapped(span: Span, units: Units): string {
  return `${capitalFrom(span, units)} the map has a road now; before it had none.`;
}

export function sayRoadChanged(span: Span, was: Road, now: Road, units: Units): string {
  return `${capitalFrom(span, units)} the drive runs on ${nameOf(now)}; before on ${nameOf(was)}.`;
}

/** Both days, and what a newer check on older data means. */
export function sayDays(was: string | undefined, now: string | undefined): string {
  const day = (text: string | undefined) => (text === undefined ? 'an unknown day' : dayInWords(text));
  const both = `Map data of ${day(now)}, held against that of ${day(was)}.`;
  if (was === undefined || now === undefined || now >= was) return both;
  return `${both} The map on the shelf now holds the older data: what is told as new may be out of date, and what is told as gone may be there.`;
}

/** `Tight, as mapped "3.2"` */
function sideOf({ level, limit, subject, kind, tags, note }: Finding): string {
  const word = LEVEL_WORD[level].toLowerCase();
  if (note !== undefined && limit !== undefined)
    return `${word}, by the firm’s own note ${clip(limit.asMapped, 60)}`;
  if (limit !== undefined) return `${word}, mapped as ${clip(limit.asMapped, 60)}`;
  const mapped = Object.entries(tags).map(([key, value]) => `${key}=${value}`);
  if (mapped.length > 0) return `${word}, mapped as ${clip(mapped.join(', '), 120)}`;
  return `${word}, ${nameSubject({ subject, kind })}`;
}

function capitalFrom({ fromM, toM }: Span, units: Units): string {
  return `From ${distanceIn(units, fromM)} for ${lengthIn(units, toM - fromM)}`;
}

const CLASS_WORD: Readonly<Record<string, string>> = {
  motorway: 'a motorway',
  trunk: 'a trunk road',
  primary: 'a main road',
  secondary: 'a secondary road',
  tertiary: 'a local road',
  unclassified: 'a minor road',
  residential: 'a residential street',
  living_street: 'a living street',
  service: 'a service road',
  track: 'a track',
  ferry: 'a ferry',
};
const SLIP = /_link$/;

/** `A5 High Street (a main road)` */
function nameOf({ name, ref, class: highway }: Road): string {
  const slip = SLIP.test(highway) ? ', its slip road' : '';
  const word = `${CLASS_WORD[highway.replace(SLIP, '')] ?? `a way mapped as ${clip(highway, 30)}`}${slip}`;
  const called = [ref, name].filter((part) => part !== undefined).join(' ');
  return called === '' ? word : `${clip(called, 60)} (${word})`;
}
