import { areasOf } from '../../drive/beside/areas.ts';
import { oncePerDrive } from '../../drive/once-per-drive.ts';
import { pointAt } from '../../drive/point-at.ts';
import type { Level } from '../../report/report.ts';
import type { Tags } from '../../roads/roads.ts';
import { type Firmness, firmnessOf, isPaved, saysGround } from '../../tags/ground.ts';
import { pick } from '../../tags/pick.ts';
import { isSiteRoad } from '../../tags/road-class.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, type Run, wholeOf } from '../run.ts';
import { type GroundKind, sayGround } from './say-ground.ts';
import { softLandAt } from './soft-land.ts';

/** Shorter pieces of good ground between bad ones do not end the bad stretch. Metres. */
const GAP_M = 100;
/** A track this short is seen to its end from the road. Metres. */
const SHORT_TRACK_M = 100;

interface GroundPiece extends Piece {
  readonly firmness: Firmness;
  readonly kind: GroundKind;
  readonly tags: Tags;
}

const KIND: Readonly<Record<Firmness, GroundKind>> = {
  impassable: 'impassable',
  verySoft: 'very soft',
  veryRough: 'very rough',
  soft: 'soft',
  loose: 'loose',
  unknown: 'not mapped',
};

/** What is mapped as bad ground may stop the vehicle; what is guessed from the land beneath may well be firm. */
const LEVEL: Readonly<Record<GroundKind, Level>> = {
  impassable: 'tight',
  'very soft': 'tight',
  'very rough': 'tight',
  soft: 'tight',
  'may be soft': 'care',
  loose: 'care',
  'not mapped': 'care',
};

/** A drive on the roads it follows. */
type Followed = Pick<RuleInput, 'drive' | 'roads'>;

/** Ground that a front-driven vehicle of some 3.5 t has to mind: soft, rough, loose, unknown. */
export const ground: SubjectRule = (input) => {
  const pieces = groundPieces(input.drive, input.roads);
  return joinRuns(pieces, GAP_M, ({ kind }) => kind).map((run) => draftOf(input, run));
};

const groundPieces = oncePerDrive((drive, roads) =>
  drivenWays(drive, roads).flatMap((place) => groundOf({ drive, roads }, place)),
);

function groundOf(input: Followed, place: Place): GroundPiece[] {
  if (place.tags['route'] === 'ferry') return [];
  const said = firmnessOf(place.tags);
  if (said !== undefined) return [{ ...wholeOf(place), ...said, kind: KIND[said.firmness] }];
  if (saysGround(place.tags) || isPaved(place.tags)) return [];
  const land = isSiteRoad(place.tags) && !isMadeGround(place.tags) ? landUnder(input, place) : undefined;
  if (land !== undefined)
    return [
      {
        ...wholeOf(place),
        firmness: 'soft',
        kind: land.mapped ? 'soft' : 'may be soft',
        tags: land.tags,
      },
    ];
  if (place.tags['highway'] !== 'track') return [];
  return [
    { ...wholeOf(place), firmness: 'unknown', kind: 'not mapped', tags: pick(place.tags, ['highway']) },
  ];
}

/** Service roads that are built as hard as the street they belong to, whatever land they are drawn over. */
const MADE_GROUND = new Set(['parking_aisle', 'driveway', 'drive-through', 'alley', 'emergency_access']);

function isMadeGround({ service }: Tags): boolean {
  return MADE_GROUND.has(service ?? '');
}

/** The soft land that the middle of a way lies on. */
function landUnder(input: Followed, place: Place) {
  const middle = pointAt(input.drive, input.roads, (place.fromM + place.toM) / 2);
  return middle === undefined ? undefined : softLandAt(areasOf(input.roads), input.roads, middle);
}

function draftOf(input: RuleInput, run: Run<GroundPiece>): Draft {
  const [{ firmness, kind, tags }] = run;
  const lengthM = coveredM(run);
  const facts = {
    tags: run.map((piece) => piece.tags),
    grossKg: input.envelope.grossKg,
    units: input.units,
  };
  return {
    subject: 'ground',
    kind,
    level: LEVEL[kind],
    run,
    tags,
    aspect: firmness,
    again: 'folded',
    folded: kind === 'loose' || (kind === 'not mapped' && lengthM < SHORT_TRACK_M),
    ...sayGround(kind, lengthM, facts),
  };
}
