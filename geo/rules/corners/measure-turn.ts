import type { DrivenTurn } from '../../drive/turns/driven-turn.ts';
import type { Turn } from '../../report/turn.ts';
import type { Tags } from '../../roads/roads.ts';
import { tailSwingM } from '../../swing/circle.ts';
import type { Fit } from '../../swing/corner/fit-corner.ts';
import { startInLane, swingFigures } from '../../swing/corner/swing-figures.ts';
import { isTwoWay } from '../../tags/carriageway.ts';
import { miniRoundaboutShape, ringShape, turnBackShape } from './circle-shape.ts';
import { hairpinShape } from './hairpin-shape.ts';
import { junctionShape } from './junction-shape.ts';
import type { RoadRoom } from './road-room.ts';
import type { Shape } from './shape.ts';
import { type CornerSite, otherSide, turnRadOf } from './site.ts';

/** What is on the side that the tail goes out to, as one drives before the turn. */
export type Beside = 'kerb' | 'oncoming traffic' | 'lane beside';

export interface MeasuredTurn {
  readonly driven: DrivenTurn;
  readonly turn: Turn;
  readonly beside: Beside;
  /** between the body's side and the edge of its own lane, driven in the middle of it before the turn; metres */
  readonly besideM: number;
  /** the fit where what was assumed is as roomy as it may be, and the tail's swing then */
  readonly roomiest: Fit & { readonly planM: number };
  /** every width that decides is mapped, and none is an estimate */
  readonly mapped: boolean;
  /** of the narrower of the two roads */
  readonly tags: Tags;
}

/** What one turn asks of one vehicle: widths, the room its largest even sweep takes, the swing of its tail. */
export function measureTurn(site: CornerSite): MeasuredTurn {
  const { driven, vehicle, side, driveSide, entry, exit, before, after } = site;
  const shape = shapeOf(site);
  const { fit, roomiest } = shape;
  const swing = swingOf(site, shape);
  const start = startInLane(vehicle, round(entry.laneM, 0.001), swing.planM);
  // inside a circle no edge of a lane stands beside the tail where it goes out
  const inCircle = shape.circleM !== undefined || driven.part === 'ring' || driven.kind === 'u-turn';
  const turn: Turn = {
    kind: driven.kind,
    side,
    turnDeg: round(driven.turnDeg, 1),
    driveSide,
    entry: widthsOf(entry),
    exit: widthsOf(exit),
    kerbRadiusM: site.kerbRadiusM,
    ...(shape.circleM === undefined ? {} : { circleM: round(shape.circleM, 0.1) }),
    ...(shape.bendRadiusM === undefined ? {} : { bendRadiusM: round(shape.bendRadiusM, 0.1) }),
    room: fit.room,
    rearAxleRadiusM: round(fit.rearAxleRadiusM, 0.01),
    lockFrom: vehicle.lock.from,
    ...(inCircle ? {} : { start }),
    swing,
    assumed: shape.assumed.map((size) => ({ ...size, m: round(size.m, 0.01) })),
  };
  // a road of one lane has its edge on either side
  const atEdge = turn.swing.side === driveSide || entry.laneM >= entry.roadM;
  return {
    driven,
    turn,
    beside: atEdge ? 'kerb' : isTwoWay(before) ? 'oncoming traffic' : 'lane beside',
    besideM: start.gapM,
    roomiest: { ...roomiest, planM: tailSwingM(vehicle, roomiest.rearAxleRadiusM, turnRadOf(driven)) },
    mapped: shape.mapped,
    tags: entry.roadM < exit.roadM ? before : after,
  };
}

/**
 * How far the tail goes out over the line beside the lane it starts in, metres; 0 where it stays within, and where no
 * such line is: round a ring, and turning back.
 */
export function tailOverM({ turn }: MeasuredTurn): number {
  return turn.start?.overM ?? 0;
}

/** Whether even the widths as mapped leave no single sweep of the wheel that gets round. */
export function mustBackUp({ turn, roomiest, mapped }: MeasuredTurn): boolean {
  return mapped && turn.room === 'back up' && roomiest.room === 'back up';
}

function shapeOf(site: CornerSite): Shape {
  const { driven, side, driveSide } = site;
  switch (driven.kind) {
    case 'roundabout':
      return driven.part === 'ring' ? ringShape(site) : junctionShape(site);
    case 'mini-roundabout':
      return side === driveSide ? junctionShape(site) : miniRoundaboutShape(site);
    case 'u-turn':
      return turnBackShape(site);
    case 'bend':
      return driven.drawnRadiusM !== undefined || driven.unmeasured
        ? hairpinShape(site)
        : junctionShape(site);
    case 'junction':
      return junctionShape(site);
  }
}

function swingOf({ vehicle, driven, side }: CornerSite, { fit, fromM, toM }: Shape): Turn['swing'] {
  const swing = swingFigures(vehicle, fit.rearAxleRadiusM, turnRadOf(driven));
  return {
    side: otherSide(side),
    gentleM: round(swing.gentleM, 0.001),
    planM: round(swing.planM, 0.001),
    planFromM: round(Math.min(fromM, swing.planM), 0.001),
    planToM: round(Math.max(toM, swing.planM), 0.001),
    worstM: round(swing.worstM, 0.001),
    worstFromM: round(swing.worstFromM, 0.001),
    worstToM: round(swing.worstToM, 0.001),
  };
}

function widthsOf({ toLaneEdgeM, roadM, from }: RoadRoom): Turn['entry'] {
  return { laneM: round(toLaneEdgeM, 0.01), roadM: round(roadM, 0.01), from };
}

function round(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(4));
}
