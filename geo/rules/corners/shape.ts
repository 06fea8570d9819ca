import { largest, smallest } from '../../lists.ts';
import type { AssumedSize } from '../../report/turn.ts';
import type { Tags } from '../../roads/roads.ts';
import { tailSwingM } from '../../swing/circle.ts';
import type { Fit } from '../../swing/corner/fit-corner.ts';
import { isTwoWay } from '../../tags/carriageway.ts';
import type { RoadRoom } from './road-room.ts';
import { type CornerSite, turnRadOf } from './site.ts';

/** A radius fitted to a drawing with node errors of a metre is good to this share. */
export const DRAWN_OFF = 0.2;

/** How one vehicle gets round one turn, as wide as it is mapped or usually is. */
export interface Shape {
  readonly fit: Fit;
  /** the fit where what is assumed is as roomy as it may be */
  readonly roomiest: Fit;
  /** range that the assumed figures leave to the swing of the tail, metres */
  readonly fromM: number;
  readonly toM: number;
  /** outer diameter of a circle, metres */
  readonly circleM?: number;
  /** of the middle line of a bend, metres */
  readonly bendRadiusM?: number;
  readonly assumed: readonly AssumedSize[];
  /** every width that decides is mapped, and none is an estimate */
  readonly mapped: boolean;
}

/** Swing of the tail over several fits of one turn, metres. */
export function swingRange(
  { vehicle, driven }: CornerSite,
  fits: readonly Fit[],
): { readonly fromM: number; readonly toM: number } {
  const swings = fits.map(({ rearAxleRadiusM }) => tailSwingM(vehicle, rearAxleRadiusM, turnRadOf(driven)));
  return { fromM: smallest(swings), toM: largest(swings) };
}

/** On a road of one lane for both directions, the own lane is the whole road. */
export function onSharedLanes({ entry, exit, before, after }: CornerSite, fit: Fit): Fit {
  if (fit.room !== 'own lane') return fit;
  const shared = (room: RoadRoom, tags: Tags) => room.laneM === room.roadM && isTwoWay(tags);
  if (!shared(exit, after)) return fit;
  return { ...fit, room: shared(entry, before) ? 'whole road' : 'other lane on the exit' };
}

/** The usual widths that stand in on the roads before and after, one and the same told once. */
export function assumedWidths({ entry, exit }: CornerSite): AssumedSize[] {
  const assumed = [entry, exit]
    .filter(({ from }) => from === 'default')
    .map(({ laneM, roadM }) => ({ what: laneM === roadM ? ('road' as const) : ('lane' as const), m: laneM }));
  return assumed.filter(
    ({ what, m }, i) => assumed.findIndex((one) => one.what === what && one.m === m) === i,
  );
}
