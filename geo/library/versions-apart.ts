import { sayMoment } from '../clock/print-dates.ts';
import { keptDay } from '../day/kept-day.ts';
import type { LoadItem } from '../load/list/load-list.ts';
import type { NoteFields } from '../notes/note.ts';
import { sizeIn, type Units } from '../units/in-units.ts';
import { printKg } from '../units/print.ts';
import { clip, counted } from '../units/text.ts';
import type { VehicleCard } from '../vehicle/card.ts';
import { type DriveBody, driveName } from './body/drive.ts';
import type { Body } from './record.ts';

/** What of an item a person may have changed, and chooses between. */
export type ChosenKind = 'drive' | 'vehicle' | 'load' | 'note';

type Lines = ReadonlyMap<string, string>;

/**
 * What versions of one item say, each as lines: only those in which they differ. Where the difference is none that is
 * told in a line, it is said that there is one.
 */
export function versionsApart<K extends ChosenKind>(
  kind: K,
  bodies: readonly Body<K>[],
  units: Units,
): string[][] {
  const told = bodies.map((body) => linesOf(kind, body, units));
  const names = [...new Set(told.flatMap((lines) => [...lines.keys()]))];
  const differ = names.filter((name) => new Set(told.map((lines) => lines.get(name))).size > 1);
  return told.map((lines) => {
    const apart = differ.map((name) => `${name}: ${lines.get(name) ?? 'none'}`);
    return apart.length > 0 ? apart : ['differs in details that are not listed here'];
  });
}

function linesOf<K extends ChosenKind>(kind: K, body: Body<K>, units: Units): Lines {
  const lines: { readonly [Kind in ChosenKind]: (of: Body<Kind>) => Lines } = {
    drive: (drive) => linesOfDrive(drive),
    vehicle: ({ card }) => linesOfCard(card, units),
    load: ({ items }) => linesOfLoad(items),
    note: (note) => linesOfNote(note, units),
  };
  return lines[kind](body);
}

function linesOfDrive(body: DriveBody): Lines {
  const { leaveAt, plan } = body;
  const day = plan === undefined ? undefined : keptDay(plan).day;
  const stops = day?.stops.map(({ name, stayMin }) => `${clip(name, 40)} ${stayMin} min`) ?? [];
  return new Map([
    ['name', clip(driveName(body), 80)],
    ['leaves', leaveAt === undefined ? 'no leave time' : sayMoment(leaveAt)],
    ['stops', stops.join(', ') || 'none'],
    ['due at the end by', day?.homeBy === undefined ? 'no return hour' : sayMoment(day.homeBy)],
  ]);
}

/** The figures of a card that decide most, and how many other entries it has. */
function linesOfCard(card: VehicleCard, units: Units): Lines {
  const { name, heightM, widthM, widthMirrorsM, lengthM, wheelbaseM, grossKg, unladenKg, rack } = card;
  const size = (m: number) => sizeIn(units, m, 'up');
  return new Map([
    ['name', clip(name, 80)],
    ['height', size(heightM)],
    ['width', size(widthM)],
    ['width over mirrors', size(widthMirrorsM)],
    ['length', size(lengthM)],
    ['wheelbase', size(wheelbaseM)],
    ['plated gross', printKg(grossKg, 'up')],
    ['unladen', unladenKg === undefined ? 'not given' : printKg(unladenKg, 'up')],
    ['rack', rack === undefined ? 'none' : rack.fitted ? 'fitted' : 'not fitted'],
  ]);
}

function linesOfLoad(items: readonly LoadItem[]): Lines {
  return new Map([
    ['aboard', counted(items.length, 'entry', 'entries')],
    ['list', items.map(({ name }) => clip(name, 40)).join(', ') || 'nothing'],
  ]);
}

function linesOfNote(
  { say, heightM, widthM, massKg, seen, until, by, at, leave }: NoteFields,
  units: Units,
): Lines {
  const size = (m: number | undefined) => (m === undefined ? 'none' : sizeIn(units, m, 'down'));
  return new Map([
    ['says', clip(say, 200)],
    ['height', size(heightM)],
    ['width', size(widthM)],
    ['weight', massKg === undefined ? 'none' : printKg(massKg, 'down')],
    ['seen', seen ?? 'no day'],
    ['counts until', until ?? 'no end'],
    ['by', by ?? 'nobody named'],
    ['leave', leave === true ? 'given' : 'not given'],
    ['place', `${at.lat.toFixed(5)}, ${at.lon.toFixed(5)}`],
  ]);
}
