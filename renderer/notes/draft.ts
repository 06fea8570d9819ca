import { bearingDeg } from '../../geo/earth/sphere.ts';
import { given } from '../../geo/given.ts';
import type { NoteFields } from '../../geo/notes/note.ts';
import { namePlaceInLine } from '../../geo/report/name-place.ts';
import type { Finding } from '../../geo/report/report.ts';
import { clip } from '../../geo/units/text.ts';
import type { FollowedDrive, FollowedLeg } from '../../main/contract/followed-drive.ts';
import { settings } from '../state/kept.ts';
import { keptNotes, type NoteDraft, noteDraft } from '../state/notes.ts';
import { openedDrive } from '../state/opened.ts';

/** Whoever wrote the last note writes the next one. */
let lastBy: string | undefined;
export function rememberBy(by: string | undefined): void {
  lastBy = by;
}

/** A new note on the place of a finding; the note that made or settled it where there is one. */
export function draftOfFinding(finding: Finding): void {
  if (finding.note !== undefined && draftOfKept(finding.note)) return;
  const drive = openedDrive.peek()?.followed;
  const middleM = (finding.fromM + finding.toM) / 2;
  const leg = drive && legAt(drive, middleM);
  const { id, subject, kind, at } = finding;
  noteDraft.value = {
    fields: {
      at,
      ...fresh(),
      ...(leg && roadOf(leg, finding)),
      ...(settles(finding) && { answers: { finding: id, subject, kind } }),
    },
    where: namePlaceInLine(finding, settings.peek().units),
    asksLeave: finding.wants === 'permission',
    ...given({ asks: asksFor(finding), drivenDeg: leg && headingOf(leg, middleM) }),
  };
}

/** A new note on a place of the map; its road is looked up when it is kept. */
export function draftAt(at: NoteFields['at']): void {
  noteDraft.value = { fields: { at, ...fresh() }, where: inWords(at) };
}

/** @returns whether it is still there */
export function draftOfKept(id: string): boolean {
  const kept = keptNotes.peek()?.find((each) => each.id === id);
  if (!kept) return false;
  const { fields, heads, others } = kept;
  const { road, at, headingDeg } = fields;
  const name = road?.name ?? road?.ref;
  noteDraft.value = {
    of: { id, heads, others },
    fields,
    where: name === undefined ? inWords(at) : `${clip(name, 60)}, ${inWords(at)}`,
    asksLeave: fields.leave === true,
    ...given({ drivenDeg: headingDeg }),
  };
  return true;
}

function fresh(): Pick<NoteFields, 'seen' | 'by'> {
  return { seen: today(), ...given({ by: lastBy }) };
}

/** The day on this computer's clock. */
export function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function inWords({ lat, lon }: NoteFields['at']): string {
  return `${lat.toFixed(5)}, ${lon.toFixed(5)}`;
}

type Stretch = Extract<FollowedLeg, { kind: 'stretch' }>;

function legAt({ legs }: FollowedDrive, atM: number): Stretch | undefined {
  return legs.find((leg): leg is Stretch => leg.kind === 'stretch' && leg.fromM <= atM && atM <= leg.toM);
}

function roadOf({ way, name, ref, class: of }: Stretch, { osm }: Finding): Pick<NoteFields, 'osm' | 'road'> {
  const point = osm.find(({ type }) => type === 'node');
  return { osm: point ?? { type: 'way', id: way }, road: given({ name, ref, class: of }) };
}

function headingOf({ line, alongM }: Stretch, atM: number): number | undefined {
  const next = Math.max(
    1,
    alongM.findIndex((m) => m >= atM),
  );
  const [lat1, lon1, lat2, lon2] = line.slice(2 * next - 2, 2 * next + 2);
  if (lat1 === undefined || lon1 === undefined || lat2 === undefined || lon2 === undefined) return undefined;
  return Math.round(bearingDeg(lat1, lon1, lat2, lon2)) % 360;
}

function settles({ level, wants }: Finding): boolean {
  return level === 'unknown' && wants !== 'time' && wants !== 'route';
}

function asksFor({ subject, kind }: Finding): NoteDraft['asks'] {
  if (subject === 'height' || kind === 'height bar') return 'height';
  if (subject === 'width' || kind === 'width bar' || subject === 'narrow') return 'width';
  return subject === 'mass' ? 'mass' : undefined;
}
