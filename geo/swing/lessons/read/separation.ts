import type { Point as Place } from '../../../earth/point.ts';
import { onGround, type Pose } from '../../motion/motion.ts';
import { boxesOf } from '../../outline.ts';
import { type Point, signOf } from '../../point.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Fixture, FixtureKind } from '../scene/fixture.ts';
import { type Near, segmentToBox } from './box-gap.ts';
import type { VehiclePart } from './part.ts';

/** The part of a tyre that meets a kerb. Metres; judgement. */
const TYRE_LENGTH_M = 0.5;
const TYRE_WIDTH_M = 0.2;
/** Nearer than this to a rectangle's end, a place of it is the corner. Metres. */
const CORNER_M = 0.25;

/** A rectangle of the vehicle where it stands on the ground: its middle, the way it points, half its sizes. Metres. */
interface PartBox {
  readonly what: 'body' | 'rack' | Extract<VehiclePart, { kind: 'wheel' }>;
  readonly frame: Pose;
  /** half the length and half the width */
  readonly half: Place;
}

/** How far a vehicle is from a thing: negative is inside it. */
export interface Separation {
  readonly gapM: number;
  /** place of the thing that is nearest, or deepest inside */
  readonly at: Point;
  readonly part: VehiclePart;
  readonly fixture: Fixture;
}

/** A vehicle where it stands, its wheel as it is turned. */
export interface Standing {
  readonly vehicle: SwingVehicle;
  readonly pose: Pose;
  readonly steerRad: number;
}

/** The parts of a standing vehicle by what they meet; each laid on the ground when it is first asked for. */
export function partsOf(standing: Standing): (kind: FixtureKind) => readonly PartBox[] {
  let wheels: readonly PartBox[] | undefined;
  let boxes: readonly PartBox[] | undefined;
  return (kind) => {
    // a kerb and an island are met by the wheels, the body hangs over them; all else that is hard by body and rack
    if (kind === 'kerb' || kind === 'island') {
      wheels ??= wheelsOf(standing);
      return wheels;
    }
    boxes ??= bodyOf(standing);
    return boxes;
  };
}

function bodyOf({ vehicle, pose }: Standing): readonly PartBox[] {
  return boxesOf(vehicle).map(({ what, backM, frontM, halfWidthM }) => ({
    what,
    frame: { ...onGround(pose, (backM + frontM) / 2, 0), headingRad: pose.headingRad },
    half: { x: (frontM - backM) / 2, y: halfWidthM },
  }));
}

const WHEELS = [
  { kind: 'wheel', side: 'left', end: 'rear' },
  { kind: 'wheel', side: 'left', end: 'front' },
  { kind: 'wheel', side: 'right', end: 'rear' },
  { kind: 'wheel', side: 'right', end: 'front' },
] as const;
const HALF_TYRE = { x: TYRE_LENGTH_M / 2, y: TYRE_WIDTH_M / 2 };

function wheelsOf({ vehicle, pose, steerRad }: Standing): readonly PartBox[] {
  return WHEELS.map((what) => {
    const [aheadM, turnRad] = what.end === 'front' ? [vehicle.wheelbaseM, steerRad] : [0, 0];
    const place = onGround(pose, aheadM, (signOf(what.side) * vehicle.trackM) / 2);
    return { what, frame: { ...place, headingRad: pose.headingRad + turnRad }, half: HALF_TYRE };
  });
}

/** The least gap of some parts to the outline of a thing; undefined where it is not below a bound. Metres. */
export function separationOf(
  parts: readonly PartBox[],
  fixture: Fixture,
  belowM: number,
): Separation | undefined {
  let best: Near | undefined;
  let nearest: PartBox | undefined;
  for (const part of parts) {
    const near = nearestOnLine(part, fixture, best?.gapM ?? belowM);
    if (!near) continue;
    best = near;
    nearest = part;
  }
  if (!best || !nearest) return undefined;
  const at = onGround(nearest.frame, best.x, best.y);
  return { gapM: best.gapM, at, part: partAt(nearest, best), fixture };
}

/** The place of a thing's outline nearest to a rectangle, in its frame; undefined where none is nearer than a bound. */
function nearestOnLine(
  { frame: { xM, yM, headingRad }, half }: PartBox,
  { line, closed }: Fixture,
  belowM: number,
): Near | undefined {
  const [cos, sin] = [Math.cos(headingRad), Math.sin(headingRad)];
  let best: Near | undefined;
  // two places used again and again: this runs for every piece of every outline at every sample
  let [before, here] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  const first = closed ? -1 : 0;
  for (let index = first; index < line.length; index++) {
    const place = line[index < 0 ? line.length - 1 : index]!;
    const [dx, dy] = [place.xM - xM, place.yM - yM];
    here.x = dx * cos + dy * sin;
    here.y = dy * cos - dx * sin;
    if (index > first) best = segmentToBox(before, here, half, best?.gapM ?? belowM) ?? best;
    [before, here] = [here, before];
  }
  return best;
}

/** What lies at a place of a rectangle: a corner where it is near two of its edges. */
function partAt({ what, half }: PartBox, { x, y }: Place): VehiclePart {
  if (typeof what !== 'string') return what;
  const nearEnd = half.x - Math.abs(x) < CORNER_M;
  const nearSide = half.y - Math.abs(y) < CORNER_M;
  const side = y > 0 ? 'left' : 'right';
  if (what === 'rack') return nearSide ? { kind: 'rack corner', side } : { kind: 'rack' };
  const end = x > 0 ? 'front' : 'rear';
  if (!nearSide) return { kind: 'end', end };
  return nearEnd ? { kind: 'corner', side, end } : { kind: 'side', side };
}
