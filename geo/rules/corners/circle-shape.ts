import { given } from '../../given.ts';
import type { AssumedSize } from '../../report/turn.ts';
import { CIRCLE_CLEARANCE_M } from '../../swing/corner/clearance.ts';
import { fitCircle } from '../../swing/corner/fit-ring.ts';
import { readLength } from '../../units/read-length.ts';
import { DRAWN_OFF, type Shape, swingRange } from './shape.ts';
import type { CornerSite } from './site.ts';

/** Outer diameter of a mini-roundabout (CD 116: 28 at most) and of a turning place (judgement). Metres. */
const MINI_M = { usual: 18, least: 15, most: 28 };
const TURNING_PLACE_M = { usual: 15, least: 12, most: 20 };
/** A road to turn back on, where its width is not mapped, may have a lane more. Metres. */
const ONE_LANE_MORE_M = 3.5;

/** Outer diameter of a circle, and the range it may stand for. Metres. */
interface Size {
  readonly usual: number;
  readonly least: number;
  readonly most: number;
}

/** Round a ring whose middle line is drawn. */
export function ringShape(site: CornerSite): Shape {
  const { entry, driven } = site;
  const circleM = 2 * (driven.drawnRadiusM ?? 0) + entry.roadM;
  const off = DRAWN_OFF / 2;
  return {
    ...inside(site, { usual: circleM, least: circleM * (1 - off), most: circleM * (1 + off) }),
    assumed: entry.from === 'default' ? [{ what: 'ring width', m: entry.roadM }] : [],
    mapped: entry.measured,
  };
}

/** Round the dome of a mini-roundabout. */
export function miniRoundaboutShape(site: CornerSite): Shape {
  return placeShape(site, 'mini-roundabout', MINI_M);
}

/** Turning back: at a turning place or mini-roundabout, else between the kerbs. */
export function turnBackShape(site: CornerSite): Shape {
  const highway = site.nodeTags['highway'];
  if (highway === 'mini_roundabout') return miniRoundaboutShape(site);
  if (highway === 'turning_circle' || highway === 'turning_loop')
    return placeShape(site, 'turning place', TURNING_PLACE_M);
  const { driven, entry, exit } = site;
  const apartM = driven.apartM ?? 0;
  const roadM = apartM > 0 ? apartM + (entry.roadM + exit.roadM) / 2 : Math.max(entry.roadM, exit.roadM);
  const usual = entry.from === 'default' || exit.from === 'default';
  return {
    ...inside(site, { usual: roadM, least: roadM, most: roadM + (usual ? ONE_LANE_MORE_M : 0) }),
    assumed: usual ? [{ what: 'road', m: roadM }] : [],
    mapped: entry.measured && exit.measured,
  };
}

/** By the `diameter` as mapped, else the usual one. */
function placeShape(site: CornerSite, what: AssumedSize['what'], size: Size): Shape {
  const { diameter } = site.nodeTags;
  const reading = readLength(diameter ?? '', 'circle');
  const mapped = reading.kind === 'value';
  const { value } = mapped ? reading : { value: 0 };
  return {
    ...inside(site, mapped ? { usual: value, least: value, most: value } : size),
    assumed: mapped
      ? []
      : [{ what, m: size.usual, ...given({ insteadOf: diameter && `diameter=${diameter}` }) }],
    mapped,
  };
}

function inside(site: CornerSite, size: Size): Omit<Shape, 'assumed' | 'mapped'> {
  const fitOf = (circleM: number) =>
    fitCircle({ vehicle: site.vehicle, circleM, clearanceM: CIRCLE_CLEARANCE_M });
  const roomiest = fitOf(size.most);
  return {
    fit: fitOf(size.usual),
    roomiest,
    ...swingRange(site, [fitOf(size.least), roomiest]),
    circleM: size.usual,
  };
}
