import type { CountryRule } from '../../country/rule.ts';
import type { Turn } from '../../report/report.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { tailSwingM } from '../../swing/circle.ts';
import { type Corner, type Fit, fitCorner } from '../../swing/corner/fit-corner.ts';
import { type Bend, fitBend, fitCircle } from '../../swing/corner/fit-ring.ts';
import { planRange, swingFigures } from '../../swing/corner/swing-figures.ts';
import type { SwingVehicle } from '../../swing/swing-vehicle.ts';
import { isTwoWay } from '../../tags/carriageway.ts';
import { readLength } from '../../units/read-length.ts';
import { roadSetting } from '../times/road-setting.ts';
import type { DrivenTurn } from './driven-turn.ts';
import { type RoadRoom, roadRoom } from './road-room.ts';

/** Kept free on every side: at a kerb one sees, and on a circle one does not. Metres; judgement. */
const CORNER_CLEARANCE_M = 0.15;
const CIRCLE_CLEARANCE_M = 0.3;
/** How far default lanes may be off. Metres; judgement. */
const LANE_OFF_M = 0.25;
const SHARED_OFF_M = 1;
/** A road to turn back on, where its width is not mapped, may have a lane more. Metres. */
const ONE_LANE_MORE_M = 3.5;
/** Default kerb radii run from half to one and a half of themselves. Judgement, as the country table says. */
const KERB_OFF = 0.5;
/** Kerbs of a roundabout's entries and exits. Metres; 10 to 20 in the design rules, from memory. */
const FLICK_KERB_M = 10;
/** Radius of a hairpin's middle line that is not drawn well enough. Metres; 5 to 12, judgement. */
const HAIRPIN_M = { usual: 8, least: 5, most: 12 };
/** A radius fitted to a drawing with node errors of a metre is good to this share. */
const DRAWN_OFF = 0.2;
/** Outer diameter of a mini-roundabout (CD 116: 28 at most) and of a turning place (judgement). Metres. */
const MINI_M = { usual: 18, least: 15, most: 28 };
const TURNING_PLACE_M = { usual: 15, least: 12, most: 20 };

export interface MeasuredTurn {
  readonly driven: DrivenTurn;
  readonly turn: Turn;
  /** between the body's side and the edge of its own lane, driven in the middle of it before the turn; metres */
  readonly besideM: number;
  /** the fit where what was assumed is as roomy as it may be, and the tail's swing then */
  readonly roomiest: Fit & { readonly planM: number };
  /** of the narrower of the two roads */
  readonly tags: Tags;
}

interface Shape {
  readonly fit: Fit;
  readonly fromM: number;
  readonly toM: number;
  readonly extra?: Pick<Turn, 'circleM' | 'bendRadiusM'>;
  readonly assumed: readonly string[];
  readonly roomiest: Fit;
}

/** What one turn asks of one vehicle: widths, the room its largest even sweep takes, the swing of its tail. */
export function measureTurn(
  driven: DrivenTurn,
  roads: Roads,
  rule: CountryRule,
  vehicle: SwingVehicle,
): MeasuredTurn {
  const driveSide = rule.driveSide.value;
  const side = driven.kind === 'u-turn' ? other(driveSide) : driven.side;
  const before = roads.ways.tags[driven.entry.way] ?? {};
  const after = roads.ways.tags[driven.exit.way] ?? {};
  const [urbanBefore, urbanAfter] = [roadSetting(before).urban, roadSetting(after).urban];
  const widths = rule.widths.value;
  const turning = { side, driveSide };
  const site: Site = {
    driven,
    vehicle,
    side,
    driveSide,
    entry: roadRoom(before, driven.entry.forward, turning, widths, urbanBefore),
    exit: roadRoom(after, driven.exit.forward, turning, widths, urbanAfter),
    before,
    after,
    kerbRadiusM: driven.part
      ? FLICK_KERB_M
      : rule.kerbRadiusM.value[urbanBefore || urbanAfter ? 'urban' : 'rural'],
    nodeTags: roads.nodes.tags.get(driven.node) ?? {},
  };
  const { fit, fromM, toM, extra, assumed, roomiest } = shapeOf(site);
  const swing = swingFigures(vehicle, fit.rearAxleRadiusM, turnRadOf(driven));
  const narrower = site.entry.roadM < site.exit.roadM ? before : after;
  return {
    driven,
    turn: {
      kind: driven.kind,
      side,
      turnDeg: round(driven.turnDeg, 1),
      driveSide,
      entry: widthsOf(site.entry),
      exit: widthsOf(site.exit),
      kerbRadiusM: site.kerbRadiusM,
      ...extra,
      room: fit.room,
      rearAxleRadiusM: round(fit.rearAxleRadiusM, 0.01),
      swing: {
        side: other(side),
        gentleM: round(swing.gentleM, 0.001),
        planM: round(swing.planM, 0.001),
        planFromM: round(Math.min(fromM, swing.planM), 0.001),
        planToM: round(Math.max(toM, swing.planM), 0.001),
        worstM: round(swing.worstM, 0.001),
        worstFromM: round(swing.worstFromM, 0.001),
        worstToM: round(swing.worstToM, 0.001),
      },
      assumed: [...assumed],
    },
    besideM: Math.max(0, (site.entry.laneM - bodyWidthM(vehicle)) / 2),
    roomiest: { ...roomiest, planM: tailSwingM(vehicle, roomiest.rearAxleRadiusM, turnRadOf(driven)) },
    tags: narrower,
  };
}

interface Site {
  readonly driven: DrivenTurn;
  readonly vehicle: SwingVehicle;
  readonly side: 'left' | 'right';
  readonly driveSide: 'left' | 'right';
  readonly entry: RoadRoom;
  readonly exit: RoadRoom;
  readonly before: Tags;
  readonly after: Tags;
  readonly kerbRadiusM: number;
  readonly nodeTags: Tags;
}

function shapeOf(site: Site): Shape {
  const { driven, side, driveSide } = site;
  switch (driven.kind) {
    case 'roundabout':
      return driven.part === 'ring' ? ringShape(site, driven.drawnRadiusM ?? 0) : cornerShape(site);
    case 'mini-roundabout':
      return side === driveSide
        ? cornerShape(site)
        : circleShape(site, placeSize(site, MINI_M), 'mini-roundabout');
    case 'u-turn':
      return turnBackShape(site);
    case 'bend':
      return driven.drawnRadiusM !== undefined || driven.unmeasured ? hairpinShape(site) : cornerShape(site);
    case 'junction':
      return cornerShape(site);
  }
}

function cornerShape(site: Site): Shape {
  const { driven, vehicle, entry, exit, kerbRadiusM } = site;
  const corner: Corner = {
    vehicle,
    turnRad: turnRadOf(driven),
    entry: { laneM: entry.toLaneEdgeM, roadM: entry.roadM },
    exit: { laneM: exit.toLaneEdgeM, roadM: exit.roadM },
    kerbRadiusM,
    clearanceM: CORNER_CLEARANCE_M,
  };
  const fit = sharedLanes(site, fitCorner(corner));
  const range = planRange(corner, {
    entry: widthsOff(entry),
    exit: widthsOff(exit),
    kerbOffM: KERB_OFF * kerbRadiusM,
  });
  const roomiest = fitCorner({
    ...corner,
    entry: atMost(entry),
    exit: atMost(exit),
    kerbRadiusM: (1 + KERB_OFF) * kerbRadiusM,
  });
  return {
    fit,
    ...range,
    assumed: [...assumedWidths(site), `kerb radius ${kerbRadiusM} m`],
    roomiest: sharedLanes(site, roomiest),
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

/** On a road of one lane for both directions, the own lane is the whole road. */
function sharedLanes({ entry, exit, before, after }: Site, fit: Fit): Fit {
  if (fit.room !== 'own lane') return fit;
  const shared = (room: RoadRoom, tags: Tags) => room.laneM === room.roadM && isTwoWay(tags);
  if (!shared(exit, after)) return fit;
  return { ...fit, room: shared(entry, before) ? 'whole road' : 'other lane on the exit' };
}

function hairpinShape(site: Site): Shape {
  const { driven, vehicle, side, driveSide, entry, exit } = site;
  const road = entry.roadM < exit.roadM ? entry : exit;
  const drawnM = driven.drawnRadiusM;
  const radii =
    drawnM === undefined
      ? HAIRPIN_M
      : { usual: drawnM, least: drawnM * (1 - DRAWN_OFF), most: drawnM * (1 + DRAWN_OFF) };
  const bendOf = (centreRadiusM: number): Bend => ({
    vehicle,
    centreRadiusM,
    widthM: road.roadM,
    clearanceM: CIRCLE_CLEARANCE_M,
    ...(road.laneM < road.roadM && isTwoWay(site.before)
      ? {
          ownLane: {
            widthM: road.laneM,
            at: side === driveSide ? ('inside' as const) : ('outside' as const),
          },
        }
      : {}),
  });
  const fitOf = (centreRadiusM: number): Fit => {
    const { room, rearAxleRadiusM } = fitBend(bendOf(centreRadiusM));
    return sharedLanes(site, { room, rearAxleRadiusM });
  };
  const roomiest = fitOf(radii.most);
  return {
    fit: fitOf(radii.usual),
    roomiest,
    ...rangeOf(site, [fitOf(radii.least), roomiest]),
    extra: { bendRadiusM: round(radii.usual, 0.1) },
    assumed: [...assumedWidths(site), ...(drawnM === undefined ? [`bend radius ${HAIRPIN_M.usual} m`] : [])],
  };
}

function ringShape(site: Site, drawnRadiusM: number): Shape {
  const { entry } = site;
  const circleM = 2 * drawnRadiusM + entry.roadM;
  const off = DRAWN_OFF / 2;
  return {
    ...circleShape(
      site,
      { usual: circleM, least: circleM * (1 - off), most: circleM * (1 + off), mapped: true },
      '',
    ),
    assumed: entry.from === 'default' ? [`ring ${say(entry.roadM)} m wide`] : [],
  };
}

interface Size {
  readonly usual: number;
  readonly least: number;
  readonly most: number;
  readonly mapped?: boolean;
}

/** The `diameter` of a turning place or mini-roundabout as mapped, else the usual. */
function placeSize({ nodeTags }: Site, size: Size): Size {
  const text = nodeTags['diameter'];
  const reading = text === undefined ? undefined : readLength(text);
  if (reading?.kind !== 'value' || reading.value < 5 || reading.value > 100) return size;
  return { usual: reading.value, least: reading.value, most: reading.value, mapped: true };
}

function turnBackShape(site: Site): Shape {
  const { driven, entry, exit, nodeTags } = site;
  const highway = nodeTags['highway'];
  if (highway === 'mini_roundabout') return circleShape(site, placeSize(site, MINI_M), 'mini-roundabout');
  if (highway === 'turning_circle' || highway === 'turning_loop')
    return circleShape(site, placeSize(site, TURNING_PLACE_M), 'turning place');
  const apartM = driven.apartM ?? 0;
  const roadM = apartM > 0 ? apartM + (entry.roadM + exit.roadM) / 2 : Math.max(entry.roadM, exit.roadM);
  const moreM = entry.from === 'tags' && exit.from === 'tags' ? 0 : ONE_LANE_MORE_M;
  return {
    ...circleShape(site, { usual: roadM, least: roadM, most: roadM + moreM, mapped: true }, ''),
    assumed: [entry, exit].some(({ from }) => from === 'default') ? [`road ${roadM.toFixed(1)} m`] : [],
  };
}

function circleShape(site: Site, size: Size, name: string): Shape {
  const fitOf = (circleM: number) =>
    fitCircle({ vehicle: site.vehicle, circleM, clearanceM: CIRCLE_CLEARANCE_M });
  const roomiest = fitOf(size.most);
  return {
    fit: fitOf(size.usual),
    roomiest,
    ...rangeOf(site, [fitOf(size.least), roomiest]),
    extra: { circleM: round(size.usual, 0.1) },
    assumed: size.mapped ? [] : [`${name} ${size.usual} m across`],
  };
}

function rangeOf({ vehicle, driven }: Site, fits: readonly Fit[]): { fromM: number; toM: number } {
  const swings = fits.map(({ rearAxleRadiusM }) => tailSwingM(vehicle, rearAxleRadiusM, turnRadOf(driven)));
  return { fromM: Math.min(...swings), toM: Math.max(...swings) };
}

function assumedWidths({ entry, exit }: Site): string[] {
  const lanes = [entry, exit].filter(({ from }) => from === 'default');
  return [
    ...new Set(lanes.map(({ laneM, roadM }) => `${laneM === roadM ? 'road' : 'lane'} ${say(laneM)} m`)),
  ];
}

function turnRadOf({ turnDeg }: DrivenTurn): number {
  return (Math.min(180, turnDeg) * Math.PI) / 180;
}

function widthsOf({ toLaneEdgeM, roadM, from }: RoadRoom): Turn['entry'] {
  return { laneM: round(toLaneEdgeM, 0.01), roadM: round(roadM, 0.01), from };
}

function bodyWidthM({ widthM, rack }: SwingVehicle): number {
  return Math.max(widthM, rack?.widthM ?? 0);
}

function other(side: 'left' | 'right'): 'left' | 'right' {
  return side === 'left' ? 'right' : 'left';
}

function round(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toFixed(4));
}

/** Two decimals at most, no idle noughts. */
function say(value: number): string {
  return String(round(value, 0.01));
}
