import type { Drive, Stretch } from '../../drive/drive.ts';
import { turnDeg } from '../../earth/angles.ts';
import { localFrame } from '../../earth/frame.ts';
import { awayFrom } from '../../earth/segment.ts';
import { headingOnWay } from '../../graph/place-on-edge.ts';
import { roadGraph } from '../../graph/road-graph.ts';
import { type HeldPart, heldRoad } from '../../notes/held-road.ts';
import type { LocalNote } from '../../notes/note.ts';
import { type Lost, placeNote } from '../../notes/place-note.ts';
import type { Roads } from '../../roads/roads.ts';
import { drivenWays, type Place } from '../places.ts';
import { joinRuns, type Piece, type Run, TOUCHING_M } from '../run.ts';

/** A note where the drive passes it. */
export interface NoteMet {
  readonly note: LocalNote;
  /** the driven road on which it holds */
  readonly run: Run;
}

/** A note beside the drive whose road is not known on the map any more. */
export interface NoteLost {
  readonly note: LocalNote;
  readonly lost: Lost;
}

export interface NotesOnDrive {
  readonly met: readonly NoteMet[];
  readonly lost: readonly NoteLost[];
}

/** A lost note so near the drive is told. Metres. */
const BESIDE_M = 100;

const known = new WeakMap<Drive, { roads: Roads; notes: readonly LocalNote[]; found: NotesOnDrive }>();

/** The notes that the drive passes, once for each time it does, and those beside it that cannot be placed. */
export function notesOnDrive(drive: Drive, roads: Roads, notes: readonly LocalNote[]): NotesOnDrive {
  const last = known.get(drive);
  if (last?.roads === roads && last.notes === notes) return last.found;
  const driven = drivenBy(drive, roads);
  const met: NoteMet[] = [];
  const lost: NoteLost[] = [];
  for (const note of notes) {
    const placed = placedOn(roads, note);
    if ('why' in placed) {
      if (isBeside(note, drive, roads, driven)) lost.push({ note, lost: placed });
      continue;
    }
    const pieces = placed.flatMap((part) => piecesOn(part, note, roads, driven.get(part.way) ?? []));
    for (const run of joinRuns(pieces, TOUCHING_M)) met.push({ note, run });
  }
  const found = { met, lost };
  known.set(drive, { roads, notes, found });
  return found;
}

const placed = new WeakMap<Roads, WeakMap<LocalNote, readonly HeldPart[] | Lost>>();

/** The parts of the map's ways that a note holds on, or why there are none; worked out once for a map. */
export function placedOn(roads: Roads, note: LocalNote): readonly HeldPart[] | Lost {
  const onMap = placed.get(roads) ?? new WeakMap<LocalNote, readonly HeldPart[] | Lost>();
  placed.set(roads, onMap);
  const last = onMap.get(note);
  if (last !== undefined) return last;
  const found = placeNote(note, roads);
  const parts = found.ok ? heldRoad(found.on, roads) : found.lost;
  onMap.set(note, parts);
  return parts;
}

interface DrivenWay {
  readonly place: Place;
  readonly stretch: Stretch;
}

function drivenBy(drive: Drive, roads: Roads): ReadonlyMap<number, readonly DrivenWay[]> {
  const stretches = drive.legs.filter((leg) => leg.kind === 'stretch');
  const byWay = new Map<number, DrivenWay[]>();
  for (const [i, place] of drivenWays(drive, roads).entries()) {
    const stretch = stretches[i]!;
    byWay.set(stretch.way, [...(byWay.get(stretch.way) ?? []), { place, stretch }]);
  }
  return byWay;
}

/** Less than this is rounding. Metres. */
const LEAST_M = 0.01;

/** The parts of the drive on a held part of a way; a road that is only crossed there is not driven. */
function piecesOn(part: HeldPart, note: LocalNote, roads: Roads, driven: readonly DrivenWay[]): Piece[] {
  return driven.flatMap(({ place, stretch }): Piece[] => {
    const { forward, alongFromM, alongToM } = stretch;
    const fromM = Math.max(part.fromM, Math.min(alongFromM, alongToM));
    const toM = Math.min(part.toM, Math.max(alongFromM, alongToM));
    if (toM - fromM < LEAST_M || !isHeaded(note, roads, stretch, (fromM + toM) / 2)) return [];
    const onDrive = (alongM: number) => stretch.fromM + Math.abs(alongM - alongFromM);
    return [{ place, fromM: onDrive(forward ? fromM : toM), toM: onDrive(forward ? toM : fromM) }];
  });
}

/** Whether a part of a way driven in a direction is one that a note holds for. */
export function isHeaded(
  { headingDeg }: LocalNote,
  roads: Roads,
  driven: Pick<Stretch, 'way' | 'forward'>,
  m: number,
) {
  if (headingDeg === undefined) return true;
  const along = headingOnWay(roads, roadGraph(roads), driven.way, m);
  return turnDeg(headingDeg, driven.forward ? along : (along + 180) % 360) <= 90;
}

function isBeside(
  { at }: LocalNote,
  drive: Drive,
  roads: Roads,
  driven: ReadonlyMap<number, unknown>,
): boolean {
  if (roads.index.near(at.lat, at.lon, BESIDE_M).some(({ way }) => driven.has(way))) return true;
  const frame = localFrame(at.lat, at.lon);
  return drive.legs.some((leg) => {
    if (leg.kind !== 'offMap') return false;
    const line = Array.from(leg.lat, (lat, i) => frame.toXY(lat, leg.lon[i]!));
    return line.some((b, i) => awayFrom({ x: 0, y: 0 }, line[Math.max(0, i - 1)]!, b) <= BESIDE_M);
  });
}
