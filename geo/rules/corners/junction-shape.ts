import { CORNER_CLEARANCE_M } from '../../swing/corner/clearance.ts';
import { type Corner, fitCorner } from '../../swing/corner/fit-corner.ts';
import { planRange } from '../../swing/corner/swing-figures.ts';
import type { RoadRoom } from './road-room.ts';
import { assumedWidths, onSharedLanes, type Shape } from './shape.ts';
import { type CornerSite, turnRadOf } from './site.ts';

/** How far default lanes may be off. Metres; judgement. */
const LANE_OFF_M = 0.25;
const SHARED_OFF_M = 1;
/** Default kerb radii run from half to one and a half of themselves. Judgement, as the country table says. */
const KERB_OFF = 0.5;

/** Round the kerb of a junction or a corner. */
export function junctionShape(site: CornerSite): Shape {
  const { driven, vehicle, entry, exit, kerbRadiusM } = site;
  const corner: Corner = {
    vehicle,
    turnRad: turnRadOf(driven),
    entry: { laneM: entry.toLaneEdgeM, roadM: entry.roadM },
    exit: { laneM: exit.toLaneEdgeM, roadM: exit.roadM },
    kerbRadiusM,
    clearanceM: CORNER_CLEARANCE_M,
  };
  const roomiest = fitCorner({
    ...corner,
    entry: atMost(entry),
    exit: atMost(exit),
    kerbRadiusM: (1 + KERB_OFF) * kerbRadiusM,
  });
  return {
    fit: onSharedLanes(site, fitCorner(corner)),
    roomiest: onSharedLanes(site, roomiest),
    ...planRange(corner, {
      entry: widthsOff(entry),
      exit: widthsOff(exit),
      kerbOffM: KERB_OFF * kerbRadiusM,
    }),
    assumed: [...assumedWidths(site), { what: 'kerb radius', m: kerbRadiusM }],
    mapped: entry.measured && exit.measured,
  };
}

/** A road as wide as its default may stand for. */
function atMost(room: RoadRoom): Corner['entry'] {
  const off = widthsOff(room);
  return { laneM: room.toLaneEdgeM + off.laneM, roadM: room.roadM + off.roadM };
}

/** How far default widths may be off, every lane by as much; a country lane may be anything from 3 to 5 m. */
function widthsOff({ toLaneEdgeM, laneM, roadM, from }: RoadRoom): Corner['entry'] {
  if (from === 'tags') return { laneM: 0, roadM: 0 };
  const byM = laneM === roadM ? SHARED_OFF_M : LANE_OFF_M;
  const lanesIn = (widthM: number) => Math.max(1, Math.round(widthM / laneM));
  return { laneM: lanesIn(toLaneEdgeM) * byM, roadM: lanesIn(roadM) * byM };
}
