import { given } from '../../given.ts';
import { smallest } from '../../lists.ts';
import type { KindOf } from '../../report/kinds.ts';
import type { Tags } from '../../roads/roads.ts';
import { mergeTags } from '../../roads/set-tag.ts';
import { widthLeftM } from '../../tags/mapped-gap.ts';
import { pick } from '../../tags/pick.ts';
import { isMinorRoad } from '../../tags/road-class.ts';
import { textOf } from '../../tags/text-of.ts';
import { departureSlope } from '../../vehicle/ground-angles.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place, passedNodes } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { endOf, joinRuns, type Piece, type Run, wholeOf } from '../run.ts';
import type { Words } from '../words.ts';
import { type Calming, sayCalming, sayLevelCrossing, TRAM_CROSSING } from './say-passage.ts';

/** Tracks of one railway. Metres. */
const ONE_CROSSING_M = 40;
/** Humps of one street. Metres. */
const ONE_STREET_M = 400;
/** Ramps of road humps are built from 1:15 to 1:10 (trials of the 1990s); a tail that clears no more may touch. */
const HUMP_RAMP = 0.1;
/** A level crossing may stand proud of the road by a sixth of this or less; from memory of "risk of grounding" plates. */
const LOW_TAIL = 0.15;

type Kind = KindOf<'crossing'>;
type CalmingKind = 'hump' | 'narrowing' | 'bumps';

const CALMING: Readonly<Record<Calming, CalmingKind>> = {
  hump: 'hump',
  bump: 'hump',
  dip: 'hump',
  mini_bumps: 'bumps',
  table: 'bumps',
  cushion: 'bumps',
  rumble_strip: 'bumps',
  chicane: 'narrowing',
  choker: 'narrowing',
};

/** Part of the id. */
const ASPECT: Readonly<Record<Kind, string>> = {
  'level crossing': 'rail',
  tram: 'tram',
  hump: 'low',
  narrowing: 'tight',
  bumps: 'gentle',
};

/** The tags that decide. */
const KEYS = [
  'railway',
  'traffic_calming',
  'crossing:barrier',
  'crossing:light',
  'crossing:saltire',
  'hazard',
];

interface RailPiece extends Piece {
  readonly kind: 'level crossing' | 'tram';
}

interface CalmingPiece extends Piece {
  readonly kind: CalmingKind;
  readonly what: Calming;
}

/** Level crossings, humps, dips and the narrow points made to slow traffic. */
export const crossing: SubjectRule = (input) => {
  const nodes = passedNodes(input.drive, input.roads).filter(facesUs);
  const calmings = [...nodes, ...drivenWays(input.drive, input.roads)].flatMap(calmingsOf);
  return [
    ...joinRuns(nodes.flatMap(railsOf), ONE_CROSSING_M, ({ kind }) => kind).map((run) => ({
      ...draftOf(run),
      ...(run[0].kind === 'tram' ? { folded: true, ...TRAM_CROSSING } : railWords(input, run)),
    })),
    ...joinRuns(calmings, ONE_STREET_M, ({ kind }) => kind).map((run) => ({
      ...draftOf(run),
      ...calmingWords(input, run),
    })),
  ];
};

/** A hump mapped for one direction only. */
function facesUs({ tags, forward }: Place): boolean {
  const direction = tags['direction'] ?? tags['traffic_calming:direction'];
  return direction !== (forward ? 'backward' : 'forward');
}

function railsOf(place: Place): RailPiece[] {
  const { railway } = place.tags;
  if (railway === 'level_crossing') return [{ ...wholeOf(place), kind: 'level crossing' }];
  return railway === 'tram_level_crossing' ? [{ ...wholeOf(place), kind: 'tram' }] : [];
}

function calmingsOf(place: Place): CalmingPiece[] {
  if (place.type === 'node' && railsOf(place).length > 0) return [];
  return textOf(place.tags, 'traffic_calming')
    .split(';')
    .flatMap((text) => {
      const what = text.trim();
      return isCalming(what) ? [{ ...wholeOf(place), kind: CALMING[what], what }] : [];
    });
}

function isCalming(text: string): text is Calming {
  return Object.hasOwn(CALMING, text);
}

function draftOf(run: Run<RailPiece | CalmingPiece>): Omit<Draft<'crossing'>, keyof Words> {
  const [{ kind }] = run;
  return {
    subject: 'crossing',
    kind,
    level: 'care',
    run,
    again: 'folded',
    tags: tagsOf(run),
    aspect: ASPECT[kind],
  };
}

function tagsOf(run: Run): Tags {
  return mergeTags(run.map(({ place }) => pick(place.tags, KEYS)));
}

function railWords(input: RuleInput, run: Run<RailPiece>): Words & Pick<Draft, 'folded'> {
  const tags = tagsOf(run);
  const tail = departureSlope(input.card);
  const barrier = tags['crossing:barrier'];
  const isGuarded = barrier !== undefined && barrier !== 'no';
  return {
    // behind barriers on a main road it is a road like any other
    folded: isGuarded && run.every(({ place }) => !isMinorRoad(place.wayTags)),
    ...sayLevelCrossing(run.length, tags, {
      units: input.units,
      lengthM: input.envelope.lengthM,
      lowTail: tail !== undefined && tail < LOW_TAIL ? tail : undefined,
    }),
  };
}

function calmingWords(input: RuleInput, run: Run<CalmingPiece>): Words & Pick<Draft, 'folded'> {
  const [{ kind, fromM }] = run;
  const tail = departureSlope(input.card);
  const isLow = tail !== undefined && tail < HUMP_RAMP;
  const widths = run.map(({ place }) => widthLeftM(place.tags));
  const mapped = widths.filter((widthM) => widthM !== undefined);
  return {
    folded: kind === 'bumps' && !isLow,
    ...sayCalming(kind, {
      units: input.units,
      met: run.map(({ what }) => what),
      overM: endOf(run) - fromM,
      leftM: mapped.length < widths.length ? 'not mapped' : smallest(mapped),
      ...given({ tail: kind === 'hump' || isLow ? tail : undefined }),
    }),
  };
}
