import { widthClassOf } from '../../country/default-widths.ts';
import type { WidthClass, WidthDefaults } from '../../country/rule.ts';
import { isRing } from '../../drive/turns/ring.ts';
import type { Tags } from '../../roads/roads.ts';
import { carriagewayOf, isSingleTrack, isTwoWay } from '../../tags/carriageway.ts';
import type { Driven } from '../../tags/driven.ts';
import { laneValues } from '../../tags/lanes.ts';
import { isSlipRoad } from '../../tags/road-class.ts';
import { textOf } from '../../tags/text-of.ts';
import { readLength } from '../../units/read-length.ts';

/** Narrower two-way roads have no lanes of one's own: two cars hardly pass. Metres kerb to kerb. */
const SHARED_BELOW_M = 4.8;
/** Single track by its `lanes`, kerb to kerb. Metres; service roads' default. */
const SINGLE_TRACK_M = 3.5;
/** A one-way road or slip road of one lane, where nobody mapped it. Metres; RASt 4.25 (least 3.5), slip roads from memory. */
const ONE_WAY_M = 4.25;
/** The same on a road for through traffic: room to pass what has broken down; from memory. */
const MAIN_ONE_WAY_M = 5.5;
const SLIP_M = 4.5;
/** The roadway of a roundabout of one lane. Metres; 5 to 8 in the design rules, from memory. */
const RING_M = 6;
/** Figures outside are no lanes. Metres, and a count. */
const LANES_BELIEVED_UNDER = 12;

/** A road's room to turn in or out of, metres. */
export interface RoadRoom {
  /** the lane driven in */
  readonly laneM: number;
  /** from the kerb on the inside of the turn to the outer edge of that lane */
  readonly toLaneEdgeM: number;
  /** kerb to kerb; equal to the lane on a single-track road */
  readonly roadM: number;
  readonly from: 'tags' | 'default';
  /** the road's width is mapped and is no estimate */
  readonly measured: boolean;
}

/** How a road is driven into or out of a turn, and what is usual there. */
export interface Turning {
  /** along the drawn order of the way */
  readonly forward: boolean;
  /** the side turned to, and the side driven on */
  readonly side: 'left' | 'right';
  readonly driveSide: 'left' | 'right';
  readonly widths: WidthDefaults;
  /** in a town, as far as the road's own tags tell */
  readonly urban: boolean;
}

/**
 * Room on a road as one drives into or out of a turn. By `width`, `est_width`, `width:lanes` and `lanes`, else the
 * defaults of the country and class.
 */
export function roadRoom(tags: Tags, turning: Turning): RoadRoom {
  const { forward, side, driveSide } = turning;
  const twoWay = isTwoWay(tags);
  const carriageway = carriagewayOf(tags);
  const lanes = countLanes({ tags, forward });
  const laneWidths = mappedLanes({ tags, forward });
  const lanesM = twoWay ? undefined : laneWidths?.reduce((sum, one) => sum + one, 0);
  const mappedM = carriageway?.widthM ?? lanesM;
  const roadM = mappedM ?? usualRoadM(tags, lanes, turning);
  const from = mappedM === undefined ? 'default' : 'tags';
  const measured = mappedM !== undefined && carriageway?.estimated !== true;
  if (twoWay && (isSingleTrack(tags) || roadM < SHARED_BELOW_M))
    return { laneM: roadM, toLaneEdgeM: roadM, roadM, from, measured };
  const count = lanes.ours + lanes.theirs;
  const evenly = count === 1 || mappedM !== undefined || lanes.mapped;
  const usualM = evenly ? roadM / count : turning.widths.laneM[sizedAs(tags, turning)];
  const laneM = Math.min(roadM, laneWidths?.at(side === 'left' ? 0 : -1) ?? usualM);
  // turning across the oncoming lane, the kerb on the inside is beyond it
  const acrossM = twoWay && side !== driveSide ? roadM - lanes.ours * laneM : 0;
  return { laneM, toLaneEdgeM: Math.min(roadM, acrossM + laneM), roadM, from, measured };
}

/** A country lane and a town street are one class to the map. */
function sizedAs(tags: Tags, { urban }: Turning): WidthClass {
  const type = widthClassOf(textOf(tags, 'highway'));
  return type === 'unclassified' && urban ? 'residential' : type;
}

/** Kerb to kerb where no width is mapped, metres. */
function usualRoadM(tags: Tags, lanes: Lanes, turning: Turning): number {
  const sized = sizedAs(tags, turning);
  const laneM = turning.widths.laneM[sized];
  const carriagewayM = turning.widths.carriagewayM[sized];
  const twoWay = isTwoWay(tags);
  if (isRing(tags)) return Math.max(RING_M, lanes.ours * laneM);
  if (twoWay && isSingleTrack(tags)) return Math.min(carriagewayM, SINGLE_TRACK_M);
  const lanesM = (lanes.ours + lanes.theirs) * laneM;
  if (lanes.mapped) return twoWay ? lanesM : Math.max(ONE_WAY_M, lanesM);
  if (twoWay || sized === 'motorway') return carriagewayM;
  if (isSlipRoad(tags)) return SLIP_M;
  return THROUGH_ROADS.has(sized) ? MAIN_ONE_WAY_M : ONE_WAY_M;
}

const THROUGH_ROADS: ReadonlySet<WidthClass> = new Set(['trunk', 'primary', 'secondary', 'tertiary']);

/** Lanes of our direction and of the other. */
interface Lanes {
  readonly ours: number;
  readonly theirs: number;
  readonly mapped: boolean;
}

/** Lanes of our direction and of the other, as mapped or as usual. */
function countLanes({ tags, forward }: Driven): Lanes {
  const total = whole(tags['lanes']);
  if (!isTwoWay(tags)) return { ours: total ?? 1, theirs: 0, mapped: total !== undefined };
  const own = whole(tags[forward ? 'lanes:forward' : 'lanes:backward']);
  const other = whole(tags[forward ? 'lanes:backward' : 'lanes:forward']);
  if (own !== undefined && other !== undefined) return { ours: own, theirs: other, mapped: true };
  if (total === undefined || total < 2) return { ours: 1, theirs: 1, mapped: false };
  const ours = own ?? (other === undefined ? total / 2 : Math.max(1, total - other));
  return { ours, theirs: Math.max(0, total - ours), mapped: true };
}

function whole(text: string | undefined): number | undefined {
  const value = Number(text);
  return Number.isInteger(value) && value > 0 && value < LANES_BELIEVED_UNDER ? value : undefined;
}

/** Widths of our lanes as mapped, from the left in driving direction; undefined unless all can be read and believed. */
function mappedLanes({ tags, forward }: Driven): number[] | undefined {
  const text =
    tags[`width:lanes:${forward ? 'forward' : 'backward'}`] ??
    (isTwoWay(tags) ? undefined : tags['width:lanes']);
  if (text === undefined) return undefined;
  const widths = laneValues(text, undefined).map((value) => {
    const reading = value === undefined ? undefined : readLength(value, 'lane');
    return reading?.kind === 'value' ? reading.value : Number.NaN;
  });
  return widths.length > 0 && !widths.some(Number.isNaN) ? widths : undefined;
}
