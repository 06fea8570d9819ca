import {
  type Carriageway,
  carriagewayOf,
  isSingleTrack,
  isTwoWay,
  unreadableWidth,
} from '../../tags/carriageway.ts';
import { pick } from '../../tags/pick.ts';
import { isMinorRoad, isSiteRoad } from '../../tags/road-class.ts';
import { textOf } from '../../tags/text-of.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place, passedNodes } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, endOf, joinRuns, type Piece, type Run, runOf, wholeOf } from '../run.ts';
import { type NarrowKind, sayNarrow, sayUnreadableWidth } from './say-passage.ts';

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
/** Where two do not pass for so short a way it is seen through, and may be an island's side. Metres. */
const SHORT_LANE_M = 50;
/** Values of `traffic_calming` that are narrow by intent. */
const MADE_NARROW = new Set(['choker', 'chicane', 'island']);

/** What is narrow about a piece of road, the worst first. */
const WORST_FIRST: readonly NarrowKind[] = [
  'too narrow',
  'hardly wider',
  'single track',
  'give way',
  'creep past',
  'bus',
];

/** Part of the id. A lane is one lane whether its width or its lanes tell. */
const ASPECT: Readonly<Record<NarrowKind, string>> = {
  'too narrow': 'tooNarrow',
  'hardly wider': 'tight',
  'single track': 'lane',
  'give way': 'lane',
  'creep past': 'creep',
  bus: 'bus',
};

interface NarrowPiece extends Piece {
  readonly kind: NarrowKind;
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
  const runs = joinRuns(pieces, GAP_M, ({ kind }) => ASPECT[kind]);
  return [...runs.map((run) => draftOf(input, run)), ...unreadableWidths(input)];
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
        wants: 'measure',
        run: runOf(place),
        aspect: 'unreadable',
        tags: { [width.key]: width.text },
        folded: !isMinorRoad(place.tags),
        ...sayUnreadableWidth(width, input.envelope.mirrorsWidthM),
      },
    ];
  });
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
  return MADE_NARROW.has(textOf(tags, 'traffic_calming')) && carriagewayOf(tags) === undefined;
}

function kindOf(
  input: RuleInput,
  tags: Place['tags'],
  carriageway: Carriageway | undefined,
): NarrowKind | undefined {
  const { mirrorsWidthM, leastWidthM } = input.envelope;
  const twoWay = isTwoWay(tags);
  const single = twoWay && isSingleTrack(tags);
  const creepM = mirrorsWidthM + CAR_MIRRORS_M + 3 * CREEP_ROOM_M;
  if (carriageway === undefined)
    return single || (twoWay && tags['narrow'] === 'yes') ? 'single track' : undefined;
  const leftM = carriageway.widthM - carriageway.parkedM;
  // cars parked in one another's way are a guess: only the mapped figure says that the vehicle does not fit
  if (carriageway.widthM < leastWidthM) return 'too narrow';
  if (leftM < mirrorsWidthM + ALONE_ROOM_M) return 'hardly wider';
  // one lane, and wide enough for two to creep past each other, is no single track
  if (single && leftM < creepM) return 'single track';
  if (!twoWay) return undefined;
  if (leftM < creepM) return 'give way';
  if (leftM < mirrorsWidthM + CAR_MIRRORS_M + 3 * ROOM_M) return 'creep past';
  return !isMinorRoad(tags) && leftM < mirrorsWidthM + BUS_MIRRORS_M + 3 * CREEP_ROOM_M ? 'bus' : undefined;
}

function draftOf(input: RuleInput, run: Run<NarrowPiece>): Draft {
  const worst = worstOf(run);
  const { kind, tags, leftM, parked, estimated } = worst;
  const { mirrorsWidthM, leastWidthM } = input.envelope;
  const isUnsettled = kind === 'too narrow';
  return {
    subject: 'narrow',
    kind,
    level: isUnsettled ? 'unknown' : 'care',
    ...(isUnsettled ? { wants: 'measure' } : {}),
    run,
    again: 'folded',
    tags,
    aspect: ASPECT[kind],
    vehicle: { value: mirrorsWidthM, unit: 'm', what: 'width over mirrors' },
    folded: !isUnsettled && isQuiet(run),
    ...sayNarrow(kind, {
      units: input.units,
      lengthM: coveredM(run),
      leftM,
      parked,
      estimated,
      twoWay: run.some(({ place }) => isTwoWay(place.tags)),
      passingPlaces: passingPlacesOn(input, run),
      hasPassingPlaces: run.some(({ place }) => place.tags['passing_places'] === 'yes'),
      mirrorsWidthM,
      leastWidthM,
    }),
  };
}

function passingPlacesOn({ drive, roads }: RuleInput, run: Run<NarrowPiece>): number {
  const [fromM, toM] = [run[0].fromM, endOf(run)];
  return passedNodes(drive, roads).filter(
    (node) => node.tags['highway'] === 'passing_place' && node.fromM >= fromM && node.fromM <= toM,
  ).length;
}

/** Wider than any road that is narrow. Metres. */
const UNMAPPED_M = 9;

function worstOf(run: Run<NarrowPiece>): NarrowPiece {
  return run.reduce((worst, piece) => {
    const order = WORST_FIRST.indexOf(piece.kind) - WORST_FIRST.indexOf(worst.kind);
    if (order !== 0) return order < 0 ? piece : worst;
    return (piece.leftM ?? UNMAPPED_M) < (worst.leftM ?? UNMAPPED_M) ? piece : worst;
  });
}

function isQuiet(run: Run<NarrowPiece>): boolean {
  const [{ kind }] = run;
  if (kind === 'creep past' || kind === 'bus') return true;
  const length = coveredM(run);
  if (length < SHORT_LANE_M && kind !== 'hardly wider') return true;
  return length < SHORT_DRIVE_M && run.every(({ place }) => isSiteRoad(place.tags));
}
