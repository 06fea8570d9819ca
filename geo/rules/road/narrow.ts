import type { KindOf } from '../../report/kinds.ts';
import {
  type Carriageway,
  carriagewayOf,
  isSingleTrack,
  isTwoWay,
  unreadableWidth,
} from '../../tags/carriageway.ts';
import { pick } from '../../tags/pick.ts';
import { isMinorRoad, isSiteRoad } from '../../tags/road-class.ts';
import { printMetres, printRun, printSizeM } from '../../units/print.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place, passedNodes } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, type Run, runOf, wholeOf } from '../run.ts';

/** A car over its mirrors, and the room wanted between it, us and both edges. Metres; passing-room test of the trade. */
const CAR_MIRRORS_M = 2.05;
const ROOM_M = 0.3;
/** With this much at each of the three gaps both creep past each other: hardly worth a word. Metres. */
const CREEP_ROOM_M = 0.1;
/** A bus over its mirrors. Metres. */
const BUS_MIRRORS_M = 2.95;
/** Room wanted beside the mirrors in all where nothing comes the other way. Metres. */
const ALONE_ROOM_M = 0.4;
/** Wider bits of a lane this short do not end it. Metres. */
const GAP_M = 100;
/** The way into a yard. Metres. */
const SHORT_DRIVE_M = 150;
/** A single lane this short is seen through, and may be an island's side. Metres. */
const SHORT_LANE_M = 50;

/** What is narrow about a piece of road, the worst first. */
const KINDS = ['tooNarrow', 'tight', 'singleTrack', 'giveWay', 'creep', 'bus'] as const;
type Kind = (typeof KINDS)[number];

const FINDING_KIND: Readonly<Record<Kind, KindOf<'narrow'>>> = {
  tooNarrow: 'too narrow',
  tight: 'tight',
  singleTrack: 'single track',
  giveWay: 'give way',
  creep: 'creep past',
  bus: 'bus',
};

interface NarrowPiece extends Piece {
  readonly kind: Kind;
  /** metres left to drive on, where mapped */
  readonly leftM: number | undefined;
  readonly tags: Place['tags'];
  readonly parked: boolean;
  readonly estimated: boolean;
}

/**
 * Room to pass: two-way roads where a car and this vehicle do not pass freely, by mapped width or as single track; and
 * roads hardly wider than the vehicle. Default widths of a class prove nothing and are not used.
 */
export const narrow: SubjectRule = (input) => {
  const pieces = drivenWays(input.drive, input.roads).flatMap((place) => narrowPiece(input, place));
  const passing = passedNodes(input.drive, input.roads).filter(
    ({ tags }) => tags['highway'] === 'passing_place',
  );
  const runs = joinRuns(pieces, GAP_M, ({ kind }) => groupOf(kind));
  return [...runs.map((run) => draftOf(input, run, passing)), ...unreadableWidths(input)];
};

/** A width nobody can read may be a narrow one. */
function unreadableWidths(input: RuleInput): Draft[] {
  return drivenWays(input.drive, input.roads).flatMap((place): Draft[] => {
    const width = place.tags['route'] === 'ferry' ? undefined : unreadableWidth(place.tags);
    if (width === undefined) return [];
    return [
      {
        subject: 'narrow',
        kind: 'unreadable',
        level: 'unknown',
        run: runOf(place),
        aspect: 'unreadable',
        tags: { [width.key]: width.text },
        say: `A width is mapped that cannot be read: ${width.key}=${width.text}.`,
        advice: `Look before you drive in; over the mirrors the vehicle is ${printSizeM(input.envelope.mirrorsWidthM)}.`,
        folded: !isMinorRoad(place.tags),
      },
    ];
  });
}

/** A lane is one lane whether its width or its lanes tell. */
function groupOf(kind: Kind): string {
  if (kind === 'singleTrack' || kind === 'giveWay') return 'lane';
  return kind;
}

function narrowPiece(input: RuleInput, place: Place): NarrowPiece[] {
  const { tags } = place;
  if (tags['route'] === 'ferry' || isMadeNarrow(tags)) return [];
  const carriageway = carriagewayOf(tags);
  const kind = kindOf(input, tags, carriageway);
  if (kind === undefined) return [];
  return [
    {
      ...wholeOf(place),
      kind,
      leftM: carriageway === undefined ? undefined : carriageway.widthM - carriageway.parkedM,
      tags: pick(tags, [
        'lanes',
        'passing_places',
        ...(carriageway ? [carriageway.key, ...carriageway.parkedKeys] : []),
      ]),
      parked: (carriageway?.parkedM ?? 0) > 0,
      estimated: carriageway?.estimated === true,
    },
  ];
}

/** A narrowing made to slow traffic is for the crossing subject to say, unless its width is mapped. */
function isMadeNarrow(tags: Place['tags']): boolean {
  return /^(choker|chicane|island)$/.test(tags['traffic_calming'] ?? '') && carriagewayOf(tags) === undefined;
}

function kindOf(
  input: RuleInput,
  tags: Place['tags'],
  carriageway: Carriageway | undefined,
): Kind | undefined {
  const { mirrorsWidthM, leastWidthM } = input.envelope;
  const twoWay = isTwoWay(tags);
  const single = twoWay && isSingleTrack(tags);
  const creepM = mirrorsWidthM + CAR_MIRRORS_M + 3 * CREEP_ROOM_M;
  if (carriageway === undefined)
    return single || (twoWay && tags['narrow'] === 'yes') ? 'singleTrack' : undefined;
  const leftM = carriageway.widthM - carriageway.parkedM;
  // cars parked in one another's way are a guess: only the mapped figure says that the vehicle does not fit
  if (carriageway.widthM < leastWidthM) return 'tooNarrow';
  if (leftM < mirrorsWidthM + ALONE_ROOM_M) return 'tight';
  // one lane, and wide enough for two to creep past each other, is no single track
  if (single && leftM < creepM) return 'singleTrack';
  if (!twoWay) return undefined;
  if (leftM < creepM) return 'giveWay';
  if (leftM < mirrorsWidthM + CAR_MIRRORS_M + 3 * ROOM_M) return 'creep';
  return !isMinorRoad(tags) && leftM < mirrorsWidthM + BUS_MIRRORS_M + 3 * CREEP_ROOM_M ? 'bus' : undefined;
}

function draftOf(input: RuleInput, run: Run<NarrowPiece>, passing: readonly Place[]): Draft {
  const worst = worstOf(run);
  const length = printRun(coveredM(run));
  const mirrors = printMetres(input.envelope.mirrorsWidthM, 'up');
  const vehicle = { value: input.envelope.mirrorsWidthM, unit: 'm', what: 'width over mirrors' };
  const draft = {
    subject: 'narrow' as const,
    kind: FINDING_KIND[worst.kind],
    level: 'care' as const,
    run,
    again: 'folded' as const,
    tags: worst.tags,
    aspect: groupOf(worst.kind),
    vehicle,
    folded: isQuiet(run),
  };
  const wide = sayWidth(worst);
  switch (worst.kind) {
    case 'tooNarrow':
      return {
        ...draft,
        level: 'unknown',
        folded: false,
        say: `${length} of road mapped ${wide}, less than the vehicle (${printMetres(input.envelope.leastWidthM, 'up')} at its narrowest).`,
        advice: 'Find out how wide it is before driving there, or take another road.',
      };
    case 'tight':
      return {
        ...draft,
        say: `${length} of road ${wide}; over the mirrors the vehicle is ${mirrors}${sayPassing(run, passing)}.`,
        advice: run.some(({ place }) => isTwoWay(place.tags))
          ? 'Walking pace, mirrors in where needed, and look far ahead: nobody can pass but where it is wider.'
          : 'Walking pace, mirrors in where needed.',
      };
    case 'singleTrack':
    case 'giveWay':
      return { ...draft, ...sayLane(input, run, worst, length, passing) };
    case 'creep':
      return {
        ...draft,
        say: `${length} of road ${wide}: a car and this vehicle (${mirrors}) pass with care.`,
        advice: 'Keep to your edge and slow down when something comes.',
      };
    case 'bus':
      return {
        ...draft,
        say: `${length} of road ${wide}: a bus or lorry and this vehicle (${mirrors}) hardly pass.`,
        advice: 'Give way early where the road is wider.',
      };
  }
}

function worstOf(run: Run<NarrowPiece>): NarrowPiece {
  return run.reduce((worst, piece) => {
    const order = KINDS.indexOf(piece.kind) - KINDS.indexOf(worst.kind);
    if (order !== 0) return order < 0 ? piece : worst;
    return (piece.leftM ?? 9) < (worst.leftM ?? 9) ? piece : worst;
  });
}

function isQuiet(run: Run<NarrowPiece>): boolean {
  const [{ kind }] = run;
  if (kind === 'creep' || kind === 'bus') return true;
  const length = coveredM(run);
  if (length < SHORT_LANE_M && run.every(({ leftM }) => leftM === undefined)) return true;
  return length < SHORT_DRIVE_M && run.every(({ place }) => isSiteRoad(place.tags));
}

function sayWidth({ leftM, parked, estimated }: NarrowPiece): string {
  const left = printMetres(leftM ?? 0, 'down');
  return `${estimated ? 'estimated ' : ''}${left} wide${parked ? ' beside parked cars' : ''}`;
}

function sayLane(
  input: RuleInput,
  run: Run<NarrowPiece>,
  worst: NarrowPiece,
  length: string,
  passing: readonly Place[],
): Pick<Draft, 'say' | 'advice'> {
  const what =
    worst.kind === 'singleTrack'
      ? `Single track for ${length}${worst.leftM === undefined ? '' : `, ${sayWidth(worst)}`}`
      : `${length} of road ${sayWidth(worst)}: a car and this vehicle (${printMetres(input.envelope.mirrorsWidthM, 'up')}) do not pass`;
  const mapped = sayPassing(run, passing);
  if (mapped !== '')
    return {
      say: `${what}${mapped}.`,
      advice: 'Look far ahead; stop at a passing place rather than meet between two.',
    };
  return {
    say: `${what}; no passing places are mapped.`,
    advice: 'Look far ahead and remember the last wide spot: you may have to reverse to it.',
  };
}

/** The passing places mapped on a run, as nodes or by its tags; '' where none are. */
function sayPassing(run: Run<NarrowPiece>, passing: readonly Place[]): string {
  const endM = run.reduce((end, { toM }) => Math.max(end, toM), 0);
  const count = passing.filter(({ fromM }) => fromM >= run[0].fromM && fromM <= endM).length;
  if (count > 0) return `, with ${count === 1 ? 'one passing place' : `${count} passing places`} mapped`;
  return run.some(({ place }) => place.tags['passing_places'] === 'yes')
    ? ', with passing places mapped'
    : '';
}
