import type { LocalMoment } from '../../clock/moment.ts';
import { ruleFor } from '../../country/table.ts';
import type { Drive, OffMap, Stretch } from '../../drive/drive.ts';
import { distanceM, type Place } from '../../earth/sphere.ts';
import type { LoadFigures } from '../../load/weigh/figures.ts';
import type { Roads, SegmentIndex, Tags } from '../../roads/roads.ts';
import type { Along } from '../../rules/along.ts';
import type { Margins, RuleInput } from '../../rules/rule.ts';
import type { Reach } from '../../tags/conditional/context.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { type Envelope, envelopeOf } from '../../vehicle/envelope.ts';

/** The vehicle as the checker holds it. */
export interface Asker {
  readonly card: VehicleCard;
  readonly load?: LoadFigures | undefined;
  readonly margins: Margins;
}

/** One road, or a point on one, that is asked about by itself. */
export interface AskedRoad {
  readonly wayTags: Tags;
  readonly kind: number;
  readonly forward: boolean;
  /** tags of a point halfway along it */
  readonly nodeTags?: Tags;
  /** more than two roads meet at that point */
  readonly junction: boolean;
  readonly at: Place;
  /** `countryOf` code */
  readonly country: string | undefined;
  /** whether the drive goes there or past it */
  readonly reach: Reach;
  /** the clock when it is passed; undefined without a leave time */
  readonly moment: LocalMoment | undefined;
  /** told when a rule asks for the clock */
  readonly onClock: () => void;
}

const STEP_DEG = 0.0009;
/** Longer than any lead-in that still counts as starting on the road (end-runs). Metres. */
const APART_M = 1000;

/**
 * One road as a drive of its own, so that the checker's own rules judge it and nothing reads the tags a second time.
 * Passed through, open country lies before and behind it; gone to, the drive begins and ends on it.
 */
export function askedAlone(asked: AskedRoad, { card, load, margins }: Asker): RuleInput {
  const roads = loneRoad(asked);
  const { country } = asked;
  return {
    drive: loneDrive(asked, roads),
    roads,
    card,
    envelope: envelopeFor(card),
    load,
    margins,
    units: 'metric',
    country: country === undefined ? [] : [country],
    along: standingAlong(asked),
  };
}

/** Who goes there passes a point on the way into a site, whatever road leads up to it. */
function tagsOf({ wayTags, nodeTags, reach }: AskedRoad): Tags {
  return nodeTags !== undefined && reach === 'within' ? { ...wayTags, highway: 'service' } : wayTags;
}

function loneRoad(asked: AskedRoad): Roads {
  const { kind, nodeTags, junction, at } = asked;
  // the point asked about is node 1, where the place is
  const nodes = {
    count: 4,
    id: Float64Array.of(1, 2, 3, 4),
    lat: Float64Array.of(at.lat - STEP_DEG, at.lat, at.lat + STEP_DEG, at.lat),
    lon: Float64Array.of(at.lon, at.lon, at.lon, at.lon + STEP_DEG),
    tags: new Map(nodeTags === undefined ? [] : [[1, nodeTags]]),
  };
  const ways = {
    count: junction ? 2 : 1,
    id: Float64Array.of(1, 2),
    start: Uint32Array.of(0, 3, 5),
    refs: Uint32Array.of(0, 1, 2, 1, 3),
    kind: Uint8Array.of(kind, kind),
    tags: [tagsOf(asked), {}],
  };
  return { nodes, ways, restrictions: [], index: loneIndex(junction), sources: [], notes: [] };
}

function loneIndex(junction: boolean): SegmentIndex {
  const at = { distanceM: 0, t: 0 };
  const meeting = [
    { way: 0, seg: 0, ...at },
    { way: 0, seg: 1, ...at },
    ...(junction ? [{ way: 1, seg: 0, ...at }] : []),
  ];
  return { near: () => [...meeting], inBox: () => [] };
}

function loneDrive({ forward, reach }: AskedRoad, { nodes }: Roads): Drive {
  const { lat, lon } = nodes;
  const lengthM =
    distanceM(lat[0]!, lon[0]!, lat[1]!, lon[1]!) + distanceM(lat[1]!, lon[1]!, lat[2]!, lon[2]!);
  const beginM = reach === 'through' ? APART_M : 0;
  const road: Stretch = {
    kind: 'stretch',
    way: 0,
    forward,
    alongFromM: forward ? 0 : lengthM,
    alongToM: forward ? lengthM : 0,
    fromM: beginM,
    toM: beginM + lengthM,
  };
  const before: OffMap = {
    kind: 'offMap',
    fromM: 0,
    toM: APART_M,
    lat: [lat[0]!, lat[0]!],
    lon: [lon[0]!, lon[0]!],
  };
  const endM = road.toM + APART_M;
  const after: OffMap = { ...before, fromM: road.toM, toM: endM };
  return {
    lengthM: reach === 'through' ? endM : lengthM,
    legs: reach === 'through' ? [before, road, after] : [road],
    guessed: [],
    doubtful: [],
    brokenTurns: [],
  };
}

function standingAlong({ country, moment, onClock }: AskedRoad): Along {
  const clock = () => {
    onClock();
    return moment;
  };
  return {
    countryAt: () => country,
    ruleAt: () => ruleFor(country).rule,
    clockAt: clock,
    clockLeaving: clock,
  };
}

const envelopes = new WeakMap<VehicleCard, Envelope>();

function envelopeFor(card: VehicleCard): Envelope {
  const known = envelopes.get(card) ?? envelopeOf(card);
  envelopes.set(card, known);
  return known;
}
