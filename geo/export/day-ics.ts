import { printTime, readTimeMs } from '../drive/gpx/gpx-values.ts';
import { octetsOf } from '../units/octets.ts';
import { plainLine } from '../units/text.ts';

/** Something due on the day. */
export interface DueEvent {
  readonly what: string;
  /** ISO 8601 with its offset */
  readonly at: string;
}

/** What a calendar of due times is made from. */
interface Calendar {
  /** the drive's name */
  readonly drive: string;
  readonly due: readonly DueEvent[];
  /** ISO 8601: when it was handed over */
  readonly made: string;
  /** tells this handing-over from every other, for a calendar that reads it again */
  readonly uid: string;
  readonly program: string;
  readonly note: string;
}

/** Octets in a line before it is folded (RFC 5545, 3.1). */
const LINE_OCTETS = 75;

/** Due times as a calendar (RFC 5545), in UTC, each told an hour before; undefined where nothing is due. */
export function dayIcs({ drive, due, made, uid, program, note }: Calendar): string | undefined {
  const stamp = utcOf(made);
  const events = due.flatMap(({ what, at }, index) => {
    const start = utcOf(at);
    if (start === undefined || stamp === undefined) return [];
    return [
      'BEGIN:VEVENT',
      `UID:${escapeText(uid)}-${index + 1}@lanegauge`,
      `DTSTAMP:${stamp}`,
      `DTSTART:${start}`,
      `SUMMARY:${escapeText(`${what}: ${drive}`)}`,
      `DESCRIPTION:${escapeText(note)}`,
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      `DESCRIPTION:${escapeText(what)}`,
      'TRIGGER:-PT1H',
      'END:VALARM',
      'END:VEVENT',
    ];
  });
  if (events.length === 0) return undefined;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    `PRODID:-//${escapeText(program)}//EN`,
    ...events,
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${fold(line)}\r\n`).join('');
}

/** 20270612T083000Z; undefined for what is no time. */
function utcOf(iso: string): string | undefined {
  // a wall time of minutes has its seconds left out
  const ms = readTimeMs(iso.replace(/^(\d{4}-\d\d-\d\dT\d\d:\d\d)(?!:)/u, '$1:00'));
  return Number.isNaN(ms) ? undefined : printTime(ms).replace(/[-:]|\.\d+/gu, '');
}

function escapeText(text: string): string {
  return plainLine(text).replace(/[\\;,]/gu, (character) => `\\${character}`);
}

/** Lines of at most 75 octets; what goes on begins with a space. Characters stay whole. */
function fold(line: string): string {
  let folded = '';
  let octets = 0;
  for (const character of line) {
    const more = octetsOf(character);
    if (octets + more > LINE_OCTETS) {
      folded += '\r\n ';
      octets = 1;
    }
    folded += character;
    octets += more;
  }
  return folded;
}
