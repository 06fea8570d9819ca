import type { Drive, Span } from '../drive/drive.ts';
import { given } from '../given.ts';
import { append } from '../lists.ts';
import type { About, Subject, Wants } from '../report/kinds.ts';
import type { Finding, Level } from '../report/report.ts';
import type { Roads, Tags } from '../roads/roads.ts';
import { clip, plainLine } from '../units/text.ts';
import { type Place, placeAt } from './places.ts';
import { endOf, type Run, TOUCHING_M } from './run.ts';

/** A drive on the roads it follows. */
interface Followed {
  readonly drive: Drive;
  readonly roads: Roads;
}

/** A part of a drive; without a place where no mapped road lies under it. */
interface Part extends Span {
  readonly place?: Place;
}

/** What a rule has to say about one run of pieces; a single place is a run of one (`runOf`). */
export type Draft<S extends Subject = Subject> = About<S> & {
  readonly level: Level;
  readonly run: Run<Part>;
  /** the tags that decided, as mapped */
  readonly tags: Tags;
  readonly say: string;
  readonly advice: string;
  readonly wants?: Wants;
  readonly limit?: NonNullable<Finding['limit']>;
  readonly vehicle?: NonNullable<Finding['vehicle']>;
  readonly spare?: number;
  readonly turn?: NonNullable<Finding['turn']>;
  /** when the clock next lets the vehicle by, on the place's own clock: 2027-06-17T08:00 */
  readonly opensAt?: string;
  readonly folded?: boolean;
  /** id of the local note that made or settled it */
  readonly note?: string;
  /** met again later on the same drive it is no news: said again and folded. Left out: shown each time */
  readonly again?: 'folded';
  /** tells apart two findings of one subject at one place; part of the id */
  readonly aspect?: string;
  /** what the road meets there without driving on it: a bridge above, a wood beside; part of the id */
  readonly others?: Finding['osm'];
  /** where it is, if not where the run begins */
  readonly at?: Finding['at'];
};

/**
 * The findings of a drive, in driving order: neighbours that say the same are one, each has an id of its own, and what
 * is met again is folded where its rule wants it so.
 */
export function makeFindings(input: Followed, drafts: readonly Draft[]): Finding[] {
  const passes = new Map<string, number>();
  const met = new Set<string>();
  return mergeNeighbours(drafts)
    .map((draft) => {
      const base = idOf(draft);
      const pass = (passes.get(base) ?? 0) + 1;
      passes.set(base, pass);
      const id = pass === 1 ? base : `${base}#${pass}`;
      return toFinding(input, isMetAgain(met, draft) ? metAgain(draft) : draft, id);
    })
    .sort(inDrivingOrder);
}

function inDrivingOrder(a: Finding, b: Finding): number {
  return a.fromM - b.fromM || a.toM - b.toM || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** One restriction met over consecutive ways: same words, same tags, each beginning where the last ended. */
export function mergeNeighbours(drafts: readonly Draft[]): Draft[] {
  const ordered = [...drafts].sort((a, b) => a.run[0].fromM - b.run[0].fromM || endOf(a.run) - endOf(b.run));
  const merged: { readonly draft: Draft; readonly run: [Part, ...Part[]]; endM: number }[] = [];
  const open = new Map<string, (typeof merged)[number]>();
  for (const draft of ordered) {
    const key = sameKey(draft);
    const endM = endOf(draft.run);
    const last = open.get(key);
    if (last !== undefined && isOnWays(draft) && draft.run[0].fromM - last.endM < TOUCHING_M) {
      append(last.run, draft.run);
      last.endM = Math.max(last.endM, endM);
      continue;
    }
    const begun: (typeof merged)[number] = { draft, run: [...draft.run], endM };
    merged.push(begun);
    open.set(key, begun);
  }
  return merged.map(({ draft, run }) => ({ ...draft, run }));
}

function isOnWays({ run }: Draft): boolean {
  return run.every(({ place }) => place?.type === 'way');
}

function sameKey({ subject, level, run, aspect, say, limit, tags, others }: Draft): string {
  return JSON.stringify([subject, level, run[0].place?.type, aspect, say, limit, tags, others]);
}

function idOf({ subject, run, aspect, others = [] }: Draft): string {
  const driven = run.flatMap(({ place }) => (place === undefined ? [] : [drivenId(place)]));
  const met = others.map(({ type, id }) => `${type[0]}${id}`);
  const parts = [[...new Set(driven)].join(','), aspect ?? '', [...new Set(met)].join(',')];
  return [subject, ...parts.filter((part) => part !== '')].join(':');
}

/** Whether a finding's id is that of a draft, whichever pass of the drive it was. */
export function isIdOf(draft: Draft, id: string): boolean {
  const base = idOf(draft);
  return id === base || id.startsWith(`${base}#`);
}

function drivenId({ type, id, forward }: Place): string {
  return type === 'way' ? `w${id}${forward ? 'f' : 'b'}` : `${type[0]}${id}`;
}

function isMetAgain(met: Set<string>, draft: Draft): boolean {
  const key = placeKey(draft);
  const known = met.has(key);
  met.add(key);
  return known;
}

/** A drive that comes back through a place: folded where that is no news, else said to be the same. */
function metAgain(draft: Draft): Draft {
  if (draft.again === 'folded') return { ...draft, folded: true };
  return { ...draft, say: `${draft.say} The drive comes here again.` };
}

/** The same for one place whichever way it is driven through. */
function placeKey({ subject, level, aspect, ...draft }: Draft): string {
  const objects = objectsOf(draft).map(({ type, id }) => type + id);
  return [subject, level, aspect, ...objects.sort()].join(' ');
}

/** Every OSM object a draft is about, each once. */
function objectsOf({ run, others = [] }: Pick<Draft, 'run' | 'others'>): Finding['osm'] {
  const driven = run.flatMap(({ place }) =>
    place === undefined ? [] : [{ type: place.type, id: place.id }],
  );
  const each = new Map([...driven, ...others].map((one) => [one.type + one.id, one]));
  return [...each.values()];
}

/** Into a stretch, so that one right after a break is not placed before it. Metres. */
const INSIDE_M = 0.01;

function beginningOf(input: Followed, run: Run<Part>): Finding['at'] {
  const [{ place, fromM }] = run;
  if (place?.type !== 'node') return placeAt(input, Math.min(fromM + INSIDE_M, endOf(run)));
  const { lat, lon } = input.roads.nodes;
  return { lat: lat[place.index]!, lon: lon[place.index]! };
}

/** Sentences quote tags, which may hold anything and at any length; the whole text is in the finding's tags. */
const LONGEST_SENTENCE = 1200;

function toFinding(input: Followed, draft: Draft, id: string): Finding {
  const { run } = draft;
  const road = run.find(({ place }) => place?.road !== undefined)?.place?.road;
  return {
    id,
    level: draft.level,
    subject: draft.subject,
    kind: draft.kind,
    ...given({ wants: draft.wants, note: draft.note }),
    fromM: run[0].fromM,
    toM: endOf(run),
    at: draft.at ?? beginningOf(input, run),
    ...given({ road: road && plainLine(road) }),
    osm: objectsOf(draft),
    tags: { ...draft.tags },
    ...given({ limit: draft.limit, vehicle: draft.vehicle, spare: draft.spare, turn: draft.turn }),
    ...given({ opensAt: draft.opensAt }),
    say: clip(draft.say, LONGEST_SENTENCE),
    advice: clip(draft.advice, LONGEST_SENTENCE),
    ...(draft.folded === true ? { folded: true } : {}),
  };
}
