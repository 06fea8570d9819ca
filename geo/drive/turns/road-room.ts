import { widthClassOf } from '../../country/default-widths.ts';
import type { WidthDefaults } from '../../country/rule.ts';
import type { Tags } from '../../roads/roads.ts';
import { carriagewayOf, isSingleTrack, isTwoWay } from '../../tags/carriageway.ts';
import { laneValues } from '../../tags/lanes.ts';
import { readLength } from '../../units/read-length.ts';
import { isRing } from './ring.ts';

/** Narrower two-way roads have no lanes of one's own: two cars hardly pass. Metres kerb to kerb. */
export const SHARED_BELOW_M = 4.8;
/** Single track by its `lanes`, kerb to kerb. Metres; service roads' default. */
const SINGLE_TRACK_M = 3.5;
/** A one-way road or slip road of one lane, where nobody mapped it. Metres; RASt 4.25 (least 3.5), slip roads from memory. */
const ONE_WAY_M = 4.25;
/** The same on a road for through traffic: room to pass what has broken down; from memory. */
const MAIN_ONE_WAY_M = 5.5;
const SLIP_M = 4.5;
/** The roadway of a roundabout of one lane. Metres; 5 to 8 in the design rules, from memory. */
export const RING_M = 6;

/** A road's room to turn in or out of, metres. */
export interface RoadRoom {
  /** the lane driven in */
  readonly laneM: number;
  /** from the kerb on the inside of the turn to the outer edge of that lane */
  readonly toLaneEdgeM: number;
  /** kerb to kerb; equal to the lane on a single-track road */
  readonly roadM: number;
  readonly from: 'tags' | 'default';
  /** a figure of the whole road is mapped and is no estimate */
  readonly measured: boolean;
}

/** Which way one turns, and on which side one drives there. */
export interface Turning {
  readonly side: 'left' | 'right';
  readonly driveSide: 'left' | 'right';
}

/**
 * Room on a road as one drives into or out of a turn. By `width`, `est_width`, `width:lanes` and `lanes`, else the
 * defaults of the country and class.
 */
export function roadRoom(
  tags: Tags,
  forward: boolean,
  { side, driveSide }: Turning,
  widths: WidthDefaults,
  urban: boolean,
): RoadRoom {
  const type = widthClassOf(tags['highway'] ?? '');
  // a country lane and a town street are one class to the map
  const sized = type === 'unclassified' && urban ? 'residential' : type;
  const laneDefaultM = widths.laneM[sized];
  const twoWay = isTwoWay(tags);
  const mapped = carriagewayOf(tags);
  const lanes = countLanes(tags, forward, twoWay);
  const laneWidths = mappedLanes(tags, forward, twoWay);
  const mappedM = mapped?.widthM ?? (twoWay ? undefined : laneWidths?.reduce((sum, one) => sum + one, 0));
  const roadM = mappedM ?? defaultRoadM();
  const from = mappedM === undefined ? 'default' : 'tags';
  const measured = mapped !== undefined && !mapped.estimated;
  if (twoWay && (isSingleTrack(tags) || roadM < SHARED_BELOW_M))
    return { laneM: roadM, toLaneEdgeM: roadM, roadM, from, measured };
  const count = lanes.ours + lanes.theirs;
  const usualM = count === 1 || mappedM !== undefined || lanes.mapped ? roadM / count : laneDefaultM;
  const laneM = Math.min(roadM, laneWidths?.at(side === 'left' ? 0 : -1) ?? usualM);
  // turning across the oncoming lane, the kerb on the inside is beyond it
  const acrossM = twoWay && side !== driveSide ? roadM - lanes.ours * laneM : 0;
  return { laneM, toLaneEdgeM: Math.min(roadM, acrossM + laneM), roadM, from, measured };

  function defaultRoadM(): number {
    if (isRing(tags)) return Math.max(RING_M, lanes.ours * laneDefaultM);
    if (twoWay && isSingleTrack(tags)) return Math.min(widths.carriagewayM[sized], SINGLE_TRACK_M);
    const lanesM = (lanes.ours + lanes.theirs) * laneDefaultM;
    if (lanes.mapped) return twoWay ? lanesM : Math.max(ONE_WAY_M, lanesM);
    if (twoWay || type === 'motorway') return widths.carriagewayM[sized];
    if (tags['highway']?.endsWith('_link')) return SLIP_M;
    return /^(trunk|primary|secondary|tertiary)$/.test(type) ? MAIN_ONE_WAY_M : ONE_WAY_M;
  }
}

/** Lanes of our direction and of the other, as mapped or as usual. */
function countLanes(
  tags: Tags,
  forward: boolean,
  twoWay: boolean,
): { readonly ours: number; readonly theirs: number; readonly mapped: boolean } {
  const total = whole(tags['lanes']);
  if (!twoWay) return { ours: total ?? 1, theirs: 0, mapped: total !== undefined };
  const own = whole(tags[forward ? 'lanes:forward' : 'lanes:backward']);
  const other = whole(tags[forward ? 'lanes:backward' : 'lanes:forward']);
  if (own !== undefined && other !== undefined) return { ours: own, theirs: other, mapped: true };
  if (total === undefined || total < 2) return { ours: 1, theirs: 1, mapped: false };
  const ours = own ?? (other === undefined ? total / 2 : Math.max(1, total - other));
  return { ours, theirs: Math.max(0, total - ours), mapped: true };
}

function whole(text: string | undefined): number | undefined {
  const value = Number(text);
  return Number.isInteger(value) && value > 0 && value < 12 ? value : undefined;
}

/** Widths of our lanes as mapped, from the left in driving direction; undefined unless all can be read and believed. */
function mappedLanes(tags: Tags, forward: boolean, twoWay: boolean): number[] | undefined {
  const text =
    tags[`width:lanes:${forward ? 'forward' : 'backward'}`] ?? (twoWay ? undefined : tags['width:lanes']);
  if (text === undefined) return undefined;
  const widths = laneValues(text, undefined).map((value) => {
    const reading = value === undefined ? undefined : readLength(value);
    return reading?.kind === 'value' ? reading.value : Number.NaN;
  });
  return widths.length > 0 && widths.every((value) => value > 1 && value < 8) ? widths : undefined;
}
