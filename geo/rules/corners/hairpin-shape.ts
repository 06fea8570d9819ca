import { CIRCLE_CLEARANCE_M } from '../../swing/corner/clearance.ts';
import type { Fit } from '../../swing/corner/fit-corner.ts';
import { type Bend, fitBend } from '../../swing/corner/fit-ring.ts';
import { isTwoWay } from '../../tags/carriageway.ts';
import { assumedWidths, DRAWN_OFF, onSharedLanes, type Shape, swingRange } from './shape.ts';
import type { CornerSite } from './site.ts';

/** Radius of a hairpin's middle line that is not drawn well enough. Metres; 5 to 12, judgement. */
const HAIRPIN_M = { usual: 8, least: 5, most: 12 };

/** Round a hairpin, by the radius of its drawing where that is good enough. */
export function hairpinShape(site: CornerSite): Shape {
  const { entry, exit } = site;
  const road = entry.roadM < exit.roadM ? entry : exit;
  const drawnM = site.driven.drawnRadiusM;
  const radii =
    drawnM === undefined
      ? HAIRPIN_M
      : { usual: drawnM, least: drawnM * (1 - DRAWN_OFF), most: drawnM * (1 + DRAWN_OFF) };
  const fitOf = (centreRadiusM: number): Fit => {
    const { room, rearAxleRadiusM } = fitBend(bendOf(site, road, centreRadiusM));
    return onSharedLanes(site, { room, rearAxleRadiusM });
  };
  const roomiest = fitOf(radii.most);
  return {
    fit: fitOf(radii.usual),
    roomiest,
    ...swingRange(site, [fitOf(radii.least), roomiest]),
    bendRadiusM: radii.usual,
    assumed: [
      ...assumedWidths(site),
      ...(drawnM === undefined ? [{ what: 'bend radius' as const, m: HAIRPIN_M.usual }] : []),
    ],
    mapped: road.measured && drawnM !== undefined,
  };
}

function bendOf(
  { vehicle, side, driveSide, before }: CornerSite,
  { laneM, roadM }: CornerSite['entry'],
  centreRadiusM: number,
): Bend {
  const bend = { vehicle, centreRadiusM, widthM: roadM, clearanceM: CIRCLE_CLEARANCE_M };
  if (laneM >= roadM || !isTwoWay(before)) return bend;
  return { ...bend, ownLane: { widthM: laneM, at: side === driveSide ? 'inside' : 'outside' } };
}
