import { pointAt } from '../drive/drive-place.ts';
import { given } from '../given.ts';
import type { Finding, Level, Subject } from '../report/report.ts';
import type { Tags } from '../roads/roads.ts';
import type { Place } from './places.ts';
import type { RuleInput } from './rule.ts';

/** A part of a driven way, or a node passed, that a subject has something to say about. */
export interface Piece {
  readonly place: Place;
  /** metres along the drive */
  readonly fromM: number;
  readonly toM: number;
}

export type Run<P extends Piece> = readonly [P, ...P[]];

/** The whole of a driven way, or a node. */
export function wholeOf(place: Place): Piece {
  return { place, fromM: place.fromM, toM: place.toM };
}

/**
 * Pieces of one kind that follow each other, interruptions up to `gapM` not counting, as one run.
 * Runs are in order of their beginnings.
 */
export function joinRuns<P extends Piece>(
  pieces: readonly P[],
  gapM: number,
  kindOf: (piece: P) => string = () => '',
): Run<P>[] {
  const runs: [P, ...P[]][] = [];
  const open = new Map<string, { run: [P, ...P[]]; endM: number }>();
  for (const piece of [...pieces].sort((a, b) => a.fromM - b.fromM || a.toM - b.toM)) {
    const kind = kindOf(piece);
    const last = open.get(kind);
    if (last !== undefined && piece.fromM - last.endM <= gapM) {
      last.run.push(piece);
      last.endM = Math.max(last.endM, piece.toM);
      continue;
    }
    const run: [P, ...P[]] = [piece];
    runs.push(run);
    open.set(kind, { run, endM: piece.toM });
  }
  return runs;
}

/** Metres of a run that its pieces cover, overlaps counted once. */
export function coveredM(run: Run<Piece>): number {
  let sum = 0;
  let endM = Number.NEGATIVE_INFINITY;
  for (const { fromM, toM } of run) {
    sum += Math.max(0, toM - Math.max(fromM, endM));
    endM = Math.max(endM, toM);
  }
  return sum;
}

/** What a subject says about one run. */
export interface RunDraft {
  readonly level: Level;
  readonly run: Run<Piece>;
  readonly tags: Tags;
  readonly say: string;
  readonly advice: string;
  readonly limit?: NonNullable<Finding['limit']>;
  readonly vehicle?: NonNullable<Finding['vehicle']>;
  readonly folded?: boolean;
  /** what the road meets there without driving on it: a bridge above, a wood beside */
  readonly others?: Finding['osm'];
  /** tells apart two findings of one subject at one place; part of the id */
  readonly aspect?: string;
}

/**
 * The findings of one subject in driving order, each with an id of its own.
 * What is met again later on the same drive is no news: it is there, and folded.
 */
export function findingsOfRuns(input: RuleInput, subject: Subject, drafts: readonly RunDraft[]): Finding[] {
  const passes = new Map<string, number>();
  const met = new Set<string>();
  return [...drafts]
    .sort((a, b) => a.run[0].fromM - b.run[0].fromM || endOf(a) - endOf(b))
    .map((draft) => {
      const base = idOf(subject, draft);
      const pass = (passes.get(base) ?? 0) + 1;
      passes.set(base, pass);
      const place = placeKey(draft);
      const again = met.has(place);
      met.add(place);
      const id = pass === 1 ? base : `${base}#${pass}`;
      return toFinding(input, subject, again ? { ...draft, folded: true } : draft, id);
    });
}

/** The same for one place whichever way it is driven through. */
function placeKey({ run, others = [], aspect, level }: RunDraft): string {
  const ids = [
    ...run.map(({ place }) => `${place.type}${place.id}`),
    ...others.map((one) => one.type + one.id),
  ];
  return [level, aspect, ...[...new Set(ids)].sort()].join(' ');
}

function endOf(draft: RunDraft): number {
  return draft.run.reduce((end, piece) => Math.max(end, piece.toM), draft.run[0].toM);
}

function idOf(subject: Subject, { run, others = [], aspect }: RunDraft): string {
  const driven = run.map(({ place }) =>
    place.type === 'way' ? `w${place.id}${place.forward ? 'f' : 'b'}` : `${place.type[0]}${place.id}`,
  );
  const met = others.map(({ type, id }) => `${type[0]}${id}`);
  const tail = [aspect, [...new Set(met)].join(',')].filter((part) => part !== undefined && part !== '');
  return [subject, [...new Set(driven)].join(','), ...tail].join(':');
}

/** Into a stretch, so that one right after a break is not placed before it. Metres. */
const INSIDE_M = 0.01;

function toFinding(input: RuleInput, subject: Subject, draft: RunDraft, id: string): Finding {
  const { run, others = [] } = draft;
  const [first] = run;
  const toM = endOf(draft);
  const at = pointAt(input.drive, input.roads, Math.min(first.fromM + INSIDE_M, toM));
  const road = run.find((piece) => piece.place.road !== undefined)?.place.road;
  const osm = new Map<string, Finding['osm'][number]>();
  for (const one of [...run.map(({ place: { type, id: osmId } }) => ({ type, id: osmId })), ...others])
    osm.set(`${one.type}${one.id}`, one);
  return {
    id,
    level: draft.level,
    subject,
    fromM: first.fromM,
    toM,
    at: { lat: at?.lat ?? 0, lon: at?.lon ?? 0 },
    ...given({ road }),
    osm: [...osm.values()],
    tags: { ...draft.tags },
    ...given({ limit: draft.limit, vehicle: draft.vehicle }),
    say: draft.say,
    advice: draft.advice,
    ...(draft.folded === true ? { folded: true } : {}),
  };
}

/** The mapped ones of some keys, for Finding.tags. */
export function pick(tags: Tags, keys: readonly string[]): Record<string, string> {
  const picked: Record<string, string> = {};
  for (const key of keys) {
    const text = tags[key];
    if (text !== undefined) picked[key] = text;
  }
  return picked;
}
