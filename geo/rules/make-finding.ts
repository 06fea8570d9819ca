import { pointAt } from '../drive/drive-place.ts';
import { given } from '../given.ts';
import type { Finding, Level, Subject } from '../report/report.ts';
import type { Tags } from '../roads/roads.ts';
import type { Place } from './places.ts';
import type { RuleInput } from './rule.ts';

/** What a rule has to say about one place, before neighbours are merged and ids given. */
export interface Draft {
  readonly level: Level;
  readonly place: Place;
  /** the tags that decided, as mapped */
  readonly tags: Tags;
  readonly say: string;
  readonly advice: string;
  readonly limit?: NonNullable<Finding['limit']>;
  readonly vehicle?: NonNullable<Finding['vehicle']>;
  readonly spare?: number;
  readonly turn?: NonNullable<Finding['turn']>;
  readonly folded?: boolean;
  /** tells apart two findings of one subject at one place; part of the id */
  readonly aspect?: string;
}

/** The findings of one subject: neighbours merged, ids given, in driving order. */
export function makeFindings(input: RuleInput, subject: Subject, drafts: readonly Draft[]): Finding[] {
  const ordered = [...drafts].sort((a, b) => a.place.fromM - b.place.fromM || a.place.toM - b.place.toM);
  const passes = new Map<string, number>();
  return mergeRuns(ordered).map((run) => {
    const base = idOf(subject, run);
    const pass = (passes.get(base) ?? 0) + 1;
    passes.set(base, pass);
    return toFinding(input, subject, run, pass === 1 ? base : `${base}#${pass}`);
  });
}

/** One restriction met over consecutive ways: same words, same tags, each beginning where the last ended. */
type Run = readonly [Draft, ...Draft[]];

/** Legs meet exactly; this is for rounding. */
const TOUCHING_M = 0.5;

function mergeRuns(drafts: readonly Draft[]): Run[] {
  const runs: [Draft, ...Draft[]][] = [];
  const open = new Map<string, [Draft, ...Draft[]]>();
  for (const draft of drafts) {
    const key = sameKey(draft);
    const run = open.get(key);
    const last = run?.at(-1);
    if (run !== undefined && last !== undefined && draft.place.type === 'way' && last.place.type === 'way')
      if (draft.place.fromM - last.place.toM < TOUCHING_M) {
        run.push(draft);
        continue;
      }
    const fresh: [Draft, ...Draft[]] = [draft];
    runs.push(fresh);
    open.set(key, fresh);
  }
  return runs;
}

function sameKey(draft: Draft): string {
  return JSON.stringify([draft.level, draft.place.type, draft.aspect, draft.say, draft.limit, draft.tags]);
}

function idOf(subject: Subject, run: Run): string {
  const parts = run.map(({ place }) =>
    place.type === 'way' ? `w${place.id}${place.forward ? 'f' : 'b'}` : `${place.type[0]}${place.id}`,
  );
  const aspect = run[0].aspect === undefined ? '' : `:${run[0].aspect}`;
  return `${subject}:${[...new Set(parts)].join(',')}${aspect}`;
}

/** Into a stretch, so that one right after a break is not placed before it. Metres. */
const INSIDE_M = 0.01;

function beginningOf(input: RuleInput, place: Place): Finding['at'] {
  const { lat, lon } = input.roads.nodes;
  if (place.type === 'node') return { lat: lat[place.index]!, lon: lon[place.index]! };
  return placeAt(input, Math.min(place.fromM + INSIDE_M, place.toM));
}

/** Where the drive is after so many metres; nowhere (0, 0) for a drive without legs. */
export function placeAt(input: RuleInput, m: number): Finding['at'] {
  const point = pointAt(input.drive, input.roads, m);
  return { lat: point?.lat ?? 0, lon: point?.lon ?? 0 };
}

function toFinding(input: RuleInput, subject: Subject, run: Run, id: string): Finding {
  const [first] = run;
  const last = run.at(-1) ?? first;
  const road = run.find((draft) => draft.place.road !== undefined)?.place.road;
  const ids = [...new Set(run.map((draft) => draft.place.id))];
  return {
    id,
    level: first.level,
    subject,
    fromM: first.place.fromM,
    toM: last.place.toM,
    at: beginningOf(input, first.place),
    ...given({ road }),
    osm: ids.map((osmId) => ({ type: first.place.type, id: osmId })),
    tags: { ...first.tags },
    ...given({ limit: first.limit, vehicle: first.vehicle, spare: first.spare, turn: first.turn }),
    say: first.say,
    advice: first.advice,
    ...(first.folded === true ? { folded: true } : {}),
  };
}
