import type { Gap, OffMap, Span } from '../../drive/drive.ts';
import { joinSpans } from '../../drive/join-spans.ts';
import { itemAt } from '../../lists.ts';
import { wrongWays } from '../access/wrong-way.ts';
import type { Draft } from '../finding.ts';
import { holdLimits } from '../limits/hold-limits.ts';
import { placeAt } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { type Run, runOf, TOUCHING_M } from '../run.ts';
import {
  NOTHING_ON_THE_MAP,
  sayDoubtfulRoad,
  sayGap,
  sayGuessed,
  sayGuessedParts,
  sayIncomplete,
  sayOffTheMap,
} from './say-map.ts';

/** Off the roads by this little at either end is the yard or the pitch itself, where the drive is mostly on roads. Metres. */
const YARD_M = 100;
/** A break this short is a lost fix, not another day. Metres. */
const SHORT_BREAK_M = 50;

/** What the map cannot vouch for: parts with no road, breaks, parts filled in, doubtful matches, unknown limits. */
export const map: SubjectRule = (input) => [
  ...nothingDriven(input),
  ...(input.roads.incomplete ?? []).map((note) => incomplete(input, note)),
  ...input.drive.legs.filter((leg) => leg.kind === 'offMap').map((leg) => offMap(input, leg)),
  ...input.drive.legs.filter((leg) => leg.kind === 'gap').map((leg) => gap(leg, input)),
  ...guesses(input),
  ...doubtfulOneways(input),
  ...unknownLimits(input),
];

function nothingDriven(input: RuleInput): Draft[] {
  if (input.drive.legs.some((leg) => leg.kind !== 'gap')) return [];
  return [
    unknown({
      kind: 'nothing on the map',
      aspect: 'nothing',
      run: whole(input),
      ...NOTHING_ON_THE_MAP,
    }),
  ];
}

function incomplete(input: RuleInput, note: string): Draft {
  return unknown({
    kind: 'incomplete',
    aspect: 'incomplete',
    run: whole(input),
    ...sayIncomplete(note),
  });
}

function offMap(input: RuleInput, leg: OffMap): Draft {
  const lengthM = leg.toM - leg.fromM;
  const atEnd = leg.fromM <= 0 || leg.toM >= input.drive.lengthM;
  const at = { lat: itemAt(leg.lat, 0), lon: itemAt(leg.lon, 0) };
  const noMap = input.roads.ways.count === 0;
  return unknown({
    kind: 'off the map',
    aspect: `off:${placeKey(at)}`,
    run: [{ fromM: leg.fromM, toM: leg.toM }],
    at,
    // where the map has no roads at all, no file with more points would help
    ...(noMap ? {} : { wants: 'route' }),
    folded: atEnd && lengthM <= YARD_M && isMostlyOnRoads(input),
    ...sayOffTheMap(lengthM, noMap ? 'has none' : 'has roads', input.units),
  });
}

/** A drive of a few metres beside all roads is not checked, however short it is. */
function isMostlyOnRoads({ drive }: RuleInput): boolean {
  const offM = drive.legs.reduce((sum, leg) => (leg.kind === 'offMap' ? sum + leg.toM - leg.fromM : sum), 0);
  return offM <= drive.lengthM / 2;
}

function gap(leg: Gap, { units }: RuleInput): Draft {
  return unknown({
    kind: 'gap in the route',
    aspect: `gap:${placeKey(leg.from)}`,
    run: [{ fromM: leg.atM, toM: leg.atM }],
    at: { ...leg.from },
    wants: 'route',
    folded: leg.straightM <= SHORT_BREAK_M,
    ...sayGap(leg.straightM, units),
  });
}

/** More filled-in parts than this are summed up in one line, and folded away one by one. */
const GUESSES_SHOWN = 4;

function guesses(input: RuleInput): Draft[] {
  const spans = joinSpans(input.drive.guessed, TOUCHING_M);
  const [first] = spans;
  const last = spans.at(-1);
  if (spans.length <= GUESSES_SHOWN || first === undefined || last === undefined)
    return spans.map((span) => guessed(input, span));
  const sumM = spans.reduce((sum, span) => sum + span.toM - span.fromM, 0);
  const summary = unknown({
    kind: 'guessed',
    aspect: 'guessed',
    run: [{ fromM: first.fromM, toM: last.toM }],
    at: placeAt(input, first.fromM),
    wants: 'route',
    ...sayGuessedParts(sumM, spans.length, input.units),
  });
  return [summary, ...spans.map((span) => ({ ...guessed(input, span), folded: true }))];
}

function guessed(input: RuleInput, span: Span): Draft {
  const at = placeAt(input, span.fromM);
  return unknown({
    kind: 'guessed',
    aspect: `guessed:${placeKey(at)}`,
    run: [{ fromM: span.fromM, toM: span.toM }],
    at,
    wants: 'route',
    ...sayGuessed(span.toM - span.fromM, input.units),
  });
}

function doubtfulOneways(input: RuleInput): Draft[] {
  return wrongWays(input)
    .filter((wrong) => wrong.doubtful)
    .map(({ place, oneway }) => ({
      subject: 'map' as const,
      kind: 'doubtful road' as const,
      level: 'unknown' as const,
      run: runOf(place),
      tags: { [oneway.key]: oneway.text },
      wants: 'route' as const,
      aspect: 'oneway',
      ...sayDoubtfulRoad(`${oneway.key}=${oneway.text}`),
    }));
}

/** Limits of a kind that no subject knows. */
function unknownLimits(input: RuleInput): Draft[] {
  return holdLimits(input, {
    subject: 'map',
    quantities: ['unknown'],
    unit: 'm',
    unknownAdvice: 'Find out what it means before driving there.',
    judge: () => undefined,
  });
}

/** Something that hangs on no mapped object. */
function unknown(
  what: Pick<Draft<'map'>, 'kind' | 'aspect' | 'run' | 'at' | 'say' | 'advice' | 'folded' | 'wants'>,
): Draft {
  return { subject: 'map', level: 'unknown', tags: {}, ...what };
}

function whole({ drive }: RuleInput): Run<Span> {
  return [{ fromM: 0, toM: drive.lengthM }];
}

/** About a metre: the same place has the same key in every run. */
function placeKey(at: { readonly lat: number; readonly lon: number }): string {
  return `${at.lat.toFixed(5)},${at.lon.toFixed(5)}`;
}
