import type { KindOf } from '../../report/kinds.ts';
import type { Tags } from '../../roads/roads.ts';
import { widthLeftM } from '../../tags/mapped-gap.ts';
import { pick } from '../../tags/pick.ts';
import { isMinorRoad } from '../../tags/road-class.ts';
import { printMetres, printRun } from '../../units/print.ts';
import { departureSlope, printSlope } from '../../vehicle/ground-angles.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place, passedNodes } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { joinRuns, type Piece, type Run, wholeOf } from '../run.ts';

/** Tracks of one railway. Metres. */
const ONE_CROSSING_M = 40;
/** Humps of one street. Metres. */
const ONE_STREET_M = 400;
/** Ramps of road humps are built from 1:15 to 1:10 (trials of the 1990s); a tail that clears no more may touch. */
const HUMP_RAMP = 0.1;
/** A level crossing may stand proud of the road by a sixth of this or less; from memory of "risk of grounding" plates. */
const LOW_TAIL = 0.15;

const CALMING = [
  'hump',
  'bump',
  'mini_bumps',
  'table',
  'cushion',
  'dip',
  'chicane',
  'choker',
  'rumble_strip',
] as const;
type Calming = (typeof CALMING)[number];
type Kind = 'rail' | 'tram' | 'low' | 'tight' | 'gentle';

interface CrossingPiece extends Piece {
  readonly kind: Kind;
  readonly what: Calming | 'level_crossing' | 'tram_level_crossing';
}

/** Level crossings, humps, dips and the narrow points made to slow traffic. */
export const crossing: SubjectRule = (input) => {
  const places = [
    ...passedNodes(input.drive, input.roads).filter(facesUs),
    ...drivenWays(input.drive, input.roads),
  ];
  const pieces = places.flatMap(pieceOf);
  return [
    ...joinRuns(pieces.filter(isRail), ONE_CROSSING_M, ({ kind }) => kind),
    ...joinRuns(
      pieces.filter((piece) => !isRail(piece)),
      ONE_STREET_M,
      ({ kind }) => kind,
    ),
  ].map((run) => draftOf(input, run));
};

function isRail({ kind }: CrossingPiece): boolean {
  return kind === 'rail' || kind === 'tram';
}

/** A hump mapped for one direction only. */
function facesUs({ tags, forward }: Place): boolean {
  const direction = tags['direction'] ?? tags['traffic_calming:direction'];
  return direction !== (forward ? 'backward' : 'forward');
}

function pieceOf(place: Place): CrossingPiece[] {
  const { railway } = place.tags;
  if (place.type === 'node' && (railway === 'level_crossing' || railway === 'tram_level_crossing'))
    return [{ ...wholeOf(place), kind: railway === 'level_crossing' ? 'rail' : 'tram', what: railway }];
  return (place.tags['traffic_calming'] ?? '').split(';').flatMap((text) => {
    const what = CALMING.find((one) => one === text.trim());
    return what === undefined ? [] : [{ ...wholeOf(place), kind: KIND_OF[what], what }];
  });
}

const KIND_OF: Readonly<Record<Calming, Kind>> = {
  hump: 'low',
  bump: 'low',
  dip: 'low',
  mini_bumps: 'gentle',
  table: 'gentle',
  cushion: 'gentle',
  rumble_strip: 'gentle',
  chicane: 'tight',
  choker: 'tight',
};

const FINDING_KIND: Readonly<Record<Kind, KindOf<'crossing'>>> = {
  rail: 'level crossing',
  tram: 'tram',
  low: 'hump',
  tight: 'narrowing',
  gentle: 'bumps',
};

const NAMES: Readonly<Record<Calming, readonly [one: string, several: string]>> = {
  hump: ['a hump', 'humps'],
  bump: ['a short sharp bump', 'short sharp bumps'],
  mini_bumps: ['a row of small bumps', 'rows of small bumps'],
  table: ['a raised table', 'raised tables'],
  cushion: ['a speed cushion', 'speed cushions'],
  dip: ['a dip', 'dips'],
  chicane: ['a chicane', 'chicanes'],
  choker: ['a narrowing', 'narrowings'],
  rumble_strip: ['a rumble strip', 'rumble strips'],
};

function draftOf(input: RuleInput, run: Run<CrossingPiece>): Draft {
  const [first] = run;
  const tags = Object.assign({}, ...run.map(({ place }) => pick(place.tags, KEYS)));
  const draft = {
    subject: 'crossing' as const,
    kind: FINDING_KIND[first.kind],
    level: 'care' as const,
    run,
    again: 'folded' as const,
    tags,
    aspect: first.kind,
  };
  const tail = departureSlope(input.card);
  const clears = tail === undefined ? '' : ` The tail clears 1 in ${Math.ceil(1 / tail - 1e-9)}.`;
  switch (first.kind) {
    case 'rail':
      return {
        ...draft,
        say: `A level crossing${run.length > 1 ? ` over ${run.length} tracks` : ''}${sayGuard(tags)}.${tail !== undefined && tail < LOW_TAIL ? ` Tracks may stand proud of the road; the tail clears ${printSlope(tail)}.` : ''}`,
        advice: `Drive on only when there is room for ${input.envelope.lengthM.toFixed(1)} m beyond the tracks.`,
        // behind barriers on a main road it is a road like any other, but for a low tail
        folded: isGuarded(tags) && run.every(({ place }) => !isMinorRoad(place.wayTags)),
      };
    case 'tram':
      return { ...draft, folded: true, say: 'Tram tracks cross the road.', advice: 'Do not stop on them.' };
    case 'low':
      return {
        ...draft,
        say: `${sayWhat(run)}.${clears}`,
        advice: `Walking pace with both axles; the tail drops when the front wheels climb.`,
      };
    case 'tight':
      return {
        ...draft,
        say: `${sayWhat(run)}${sayLeft(run)}.`,
        advice: 'Swing wide and watch the tail; wait where something comes.',
      };
    case 'gentle':
      return {
        ...draft,
        say: `${sayWhat(run)}.${tail !== undefined && tail < HUMP_RAMP ? clears : ''}`,
        advice: 'Slow down; loose things will fly.',
        folded: tail === undefined || tail >= HUMP_RAMP,
      };
  }
}

const KEYS = [
  'railway',
  'traffic_calming',
  'crossing:barrier',
  'crossing:light',
  'crossing:saltire',
  'hazard',
];

function sayLeft(run: Run<CrossingPiece>): string {
  const widths = run.map(({ place }) => widthLeftM(place.tags));
  const least = Math.min(...widths.map((widthM) => widthM ?? Number.POSITIVE_INFINITY));
  if (widths.includes(undefined)) return '; the width left is not mapped';
  return `, mapped ${printMetres(least, 'down')} wide${run.length > 1 ? ' at the narrowest' : ''}`;
}

function isGuarded(tags: Tags): boolean {
  const barrier = tags['crossing:barrier'];
  return barrier !== undefined && barrier !== 'no';
}

function sayGuard(tags: Tags): string {
  const barrier = tags['crossing:barrier'];
  if (barrier === 'no')
    return tags['crossing:light'] === 'yes' ? ' with lights and no barrier' : ' without a barrier';
  return '';
}

function sayWhat(run: Run<CrossingPiece>): string {
  const counts = new Map<Calming, number>();
  for (const { what } of run)
    if (what !== 'level_crossing' && what !== 'tram_level_crossing')
      counts.set(what, (counts.get(what) ?? 0) + 1);
  const words = [...counts].map(([what, count]) =>
    count === 1 ? NAMES[what][0] : `${count} ${NAMES[what][1]}`,
  );
  const lengthM = Math.max(...run.map(({ toM }) => toM)) - run[0].fromM;
  const list = words.join(', ');
  return `${list.charAt(0).toUpperCase()}${list.slice(1)}${run.length > 1 && lengthM > 20 ? ` within ${printRun(lengthM)}` : ''}`;
}
