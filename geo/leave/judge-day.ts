import { countByLevel } from '../report/level.ts';
import type { LeaveVerdict } from '../report/report.ts';
import { verdictOf } from '../report/verdict.ts';
import type { Along } from '../rules/along.ts';
import type { Draft } from '../rules/finding.ts';
import { findingsOf } from '../rules/findings-of.ts';
import type { RuleInput, SubjectRule } from '../rules/rule.ts';
import { type AskedPlace, keyOf, type PlaceKey, placeOfDraft } from './asked-places.ts';
import { type LeaveDay, leaveText, MINUTES_OF_DAY } from './leave-minutes.ts';
import type { TurningPoints } from './turning-points.ts';

/** One rule, what it said at the leave time given, and where it asked the clock for that. */
export interface Said {
  readonly rule: SubjectRule;
  readonly drafts: readonly Draft[];
  readonly asked: ReadonlyMap<PlaceKey, AskedPlace>;
}

/** What is said at one place that is judged by the clock, over the day. */
export interface PlaceOverDay {
  readonly asked: AskedPlace;
  /** what is said in each of its states */
  readonly states: readonly (readonly Draft[])[];
  /** the state at each minute of leaving */
  readonly stateAt: Uint16Array;
}

/** A drive judged at every minute of the day. */
export interface DayJudged {
  readonly day: LeaveDay;
  readonly verdicts: readonly LeaveVerdict[];
  readonly places: readonly PlaceOverDay[];
}

/**
 * Judges a drive at every leave time of a day in a handful of passes: each place that is judged by the clock turns at
 * moments of its own, and each pass judges all of them, every place between other turns. All else is as it was said.
 */
export function judgeDay(
  input: RuleInput,
  said: readonly Said[],
  day: LeaveDay,
  turns: TurningPoints,
): DayJudged {
  const places = placesOverDay(input, said, day, turns);
  const constant = said.flatMap(({ drafts, asked }) =>
    drafts.filter((draft) => !asked.has(placeOfDraft(draft) ?? '')),
  );
  return { day, places, verdicts: verdictsOver(input, day, constant, places) };
}

function placesOverDay(
  input: RuleInput,
  said: readonly Said[],
  day: LeaveDay,
  turns: TurningPoints,
): PlaceOverDay[] {
  const asking = said.filter(({ asked }) => asked.size > 0);
  const all = new Map<PlaceKey, AskedPlace>();
  for (const { asked } of asking) for (const [key, one] of asked) all.set(key, withHours(one, all.get(key)));
  const turning = [...all].map(([key, asked]) => ({ key, asked, ...statesOf(turns(asked), day) }));
  const passes = turning.reduce((most, { leavingMs }) => Math.max(most, leavingMs.length), 0);
  const states = new Map<PlaceKey, Draft[][]>(turning.map(({ key }) => [key, []]));
  for (let pass = 0; pass < passes; pass++) {
    const due = new Map(
      turning.flatMap(({ key, leavingMs }) => {
        const ms = leavingMs[pass];
        return ms === undefined ? [] : [[key, ms] as const];
      }),
    );
    for (const key of due.keys()) states.get(key)?.push([]);
    const inPass = { ...input, along: eachLeaving(input.along, due) };
    for (const { rule, asked } of asking)
      for (const draft of rule(inPass)) {
        const key = placeOfDraft(draft) ?? '';
        if (asked.has(key) && due.has(key)) states.get(key)?.[pass]?.push(draft);
      }
  }
  return turning.map(({ key, asked, stateAt }) => ({ asked, stateAt, states: states.get(key) ?? [] }));
}

function withHours(one: AskedPlace, known: AskedPlace | undefined): AskedPlace {
  return known === undefined ? one : { ...one, hours: new Set([...known.hours, ...one.hours]) };
}

/** The states of a place that the day's leave times come to, and one moment of leaving for each. */
function statesOf(turnsMs: readonly number[], { unixMs }: LeaveDay) {
  const states = new Map<number, number>();
  const leavingMs: number[] = [];
  const stateAt = new Uint16Array(MINUTES_OF_DAY);
  for (let minute = 0; minute < MINUTES_OF_DAY; minute++) {
    const ms = unixMs[minute]!;
    const passed = turnsMs.filter((turn) => turn <= ms).length;
    if (!states.has(passed)) states.set(passed, leavingMs.push(ms) - 1);
    stateAt[minute] = states.get(passed)!;
  }
  return { leavingMs, stateAt };
}

/** A clock on which every place is passed as if the drive had left at that place's own moment. */
function eachLeaving(along: Along, leavingMs: ReadonlyMap<PlaceKey, number>): Along {
  const read = new Map<string, ReturnType<Along['clockLeaving']>>();
  return {
    ...along,
    clockAt: (m, judged) => {
      const ms = judged && leavingMs.get(keyOf(judged));
      if (ms === undefined) return along.clockAt(m);
      const key = `${m} ${ms}`;
      if (!read.has(key)) read.set(key, along.clockLeaving(m, ms));
      return read.get(key);
    },
  };
}

/** The parts of the day of one verdict each: where no place turns nothing is judged again. */
function verdictsOver(
  input: RuleInput,
  day: LeaveDay,
  constant: readonly Draft[],
  places: readonly PlaceOverDay[],
): LeaveVerdict[] {
  const shown = places.map(({ states, stateAt }) => {
    const texts = states.map(textOf);
    return { drafts: states, of: texts.map((text) => texts.indexOf(text)), stateAt };
  });
  const judged = new Map<string, Pick<LeaveVerdict, 'verdict' | 'counts'>>();
  const verdicts: LeaveVerdict[] = [];
  for (let minute = 0, fromMinute = 0; minute < MINUTES_OF_DAY; minute++) {
    const next = minute + 1;
    const turns = ({ of, stateAt }: (typeof shown)[number]) => of[stateAt[next]!] !== of[stateAt[minute]!];
    if (next < MINUTES_OF_DAY && !shown.some(turns)) continue;
    const states = shown.map(({ of, stateAt }) => of[stateAt[minute]!]!);
    const key = states.join(',');
    const now =
      judged.get(key) ??
      judge(input, [...constant, ...shown.flatMap(({ drafts }, i) => drafts[states[i]!]!)]);
    judged.set(key, now);
    const last = verdicts.at(-1);
    const span = { from: leaveText(day, fromMinute), to: leaveText(day, next) };
    if (last !== undefined && sameVerdict(last, now))
      verdicts[verdicts.length - 1] = { ...last, to: span.to };
    else verdicts.push({ ...span, ...now });
    fromMinute = next;
  }
  return verdicts;
}

function judge(input: RuleInput, drafts: readonly Draft[]): Pick<LeaveVerdict, 'verdict' | 'counts'> {
  const findings = findingsOf(input, drafts);
  return { verdict: verdictOf(findings), counts: countByLevel(findings) };
}

function sameVerdict(a: Pick<LeaveVerdict, 'verdict' | 'counts'>, b: typeof a): boolean {
  return a.verdict === b.verdict && JSON.stringify(a.counts) === JSON.stringify(b.counts);
}

/** What tells drafts apart in a verdict: all but when the place opens. */
function textOf(drafts: readonly Draft[]): string {
  return JSON.stringify(
    drafts.map(({ subject, kind, level, folded, again, aspect, tags, limit, say }) => [
      subject,
      kind,
      level,
      folded,
      again,
      aspect,
      tags,
      limit,
      say,
    ]),
  );
}
