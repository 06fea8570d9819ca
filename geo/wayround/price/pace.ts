import { speedFor } from '../../drive/times/speed-for.ts';
import type { Tags } from '../../roads/roads.ts';
import { isSingleTrack, isTwoWay } from '../../tags/carriageway.ts';
import { firmnessOf } from '../../tags/ground.ts';
import { RANK, rankOf } from '../../tags/road-class.ts';
import type { VehicleCard } from '../../vehicle/card.ts';
import { roomAcrossM } from '../graph/lay-turns.ts';
import { PRICES, type Prefer, timesOfClass } from './prices.ts';

/** How fast a road is, and what that counts: tenths of seconds for each metre. */
export interface Pace {
  readonly timePerM: number;
  readonly costPerM: number;
}

/** One road in one direction. */
interface PacedRoad {
  readonly tags: Tags;
  readonly forward: boolean;
  readonly country: string | undefined;
}

/** Width under which meeting traffic has to back up. Metres; way-round facts, judgement. */
const NARROW_M = 3;

/** The pace of one vehicle on a road. */
export function paceOf({ tags, forward, country }: PacedRoad, card: VehicleCard, prefer: Prefer): Pace {
  const timePerM = 36 / speedFor(tags, country, card, { forward }).kmh;
  return { timePerM, costPerM: timePerM * timesOfRoad(tags, prefer) };
}

function timesOfRoad(tags: Tags, prefer: Prefer): number {
  const widthM = roomAcrossM(tags);
  const narrow = isTwoWay(tags) && ((widthM !== undefined && widthM < NARROW_M) || isSingleTrack(tags));
  const firmness = firmnessOf(tags)?.firmness;
  const soft =
    rankOf(tags['highway']) === RANK.track ||
    firmness === 'soft' ||
    firmness === 'verySoft' ||
    firmness === 'veryRough';
  return (narrow ? PRICES.narrowTimes : 1) * (soft ? PRICES.softTimes : 1) * timesOfClass(tags, prefer);
}
