import { gapBesideM } from '../../../geo/swing/lessons/read/judge.ts';
import { WORTH_SAYING_M } from '../../../geo/swing/lessons/read/over-line.ts';
import type { SwingNow } from '../../../geo/swing/lessons/read/swing-now.ts';
import type { Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import { onGround, poseAt } from '../../../geo/swing/motion/motion.ts';
import { type Point, signOf } from '../../../geo/swing/point.ts';
import { shortIn } from '../../../geo/units/in-units.ts';
import { Dimension } from '../../look/dimension.tsx';
import { drawnUnits } from '../state/drawn-units.ts';
import type { Area, Spot } from './place-marks.ts';
import { drawn, type Projection } from './projection.ts';

const ASIDE_PX = 26;
const TICK_PX = 5;
const TEXT_PX = 24;
const TEXT_ASIDE_PX = 46;

/** The middle of the words of the moment, at the foot of the letters, and how far aside the dimension stands. Pixels. */
function momentAt({ corner, foot: onLine, line }: SwingNow, projection: Projection) {
  const tip = drawn(projection, corner);
  const foot = drawn(projection, onLine);
  const { headingRad } = line.pose;
  // backwards along the line, on the drawing: y runs down there
  const [ux, uy] = [-Math.cos(headingRad), Math.sin(headingRad)];
  const long = Math.hypot(tip.x - foot.x, tip.y - foot.y) || 1;
  const [nx, ny] = [(tip.x - foot.x) / long, (tip.y - foot.y) / long];
  const text = {
    x: tip.x + ux * TEXT_ASIDE_PX + nx * (TEXT_PX + 16 * Math.abs(nx)),
    y: tip.y + uy * TEXT_ASIDE_PX + ny * TEXT_PX + 8,
  };
  return { tip, foot, ux, uy, text };
}

/** Where the words of a moment stand. Pixels. */
export function momentArea(now: SwingNow, projection: Projection): Area {
  const { x, y } = momentAt(now, projection).text;
  return { x: x - 44, y: y - 20, widthPx: 88, heightPx: 26 };
}

/** The centimetres that the corner is beyond its line now, drawn square to that line, a little aside of the corner. */
export function SwingLine({
  now,
  touched,
  projection,
}: {
  now: SwingNow;
  touched: boolean;
  projection: Projection;
}) {
  const { outM } = now;
  if (outM < WORTH_SAYING_M) return null;
  const { tip, foot, ux, uy, text } = momentAt(now, projection);
  const beside = (from: { x: number; y: number }, px: number) =>
    `${(from.x + ux * px).toFixed(1)} ${(from.y + uy * px).toFixed(1)}`;
  const across = (from: { x: number; y: number }) =>
    `M${beside(from, ASIDE_PX - TICK_PX)}L${beside(from, ASIDE_PX + TICK_PX)}`;
  return (
    <g class={touched ? 'swing-now swing-now-over' : 'swing-now'}>
      <path
        class="swing-lead"
        d={`M${beside(tip, 0)}L${beside(tip, ASIDE_PX)}M${beside(foot, 0)}L${beside(foot, ASIDE_PX)}`}
      />
      <path
        class="swing-dimension"
        d={`M${beside(foot, ASIDE_PX)}L${beside(tip, ASIDE_PX)}${across(tip)}${across(foot)}`}
      />
      <text class="swing-cm" x={text.x.toFixed(1)} y={text.y.toFixed(1)}>
        {shortIn(drawnUnits.value, outM, 'up')}
      </text>
    </g>
  );
}

/** Where it touches. */
export function TouchMark({ at, projection }: { at: Point; projection: Projection }) {
  const { x, y } = drawn(projection, at);
  // not larger than the place itself where all is drawn small
  const r = Math.min(13, Math.max(7, projection.pxPerM * 0.22));
  const [inner, outer] = [r * 0.75, r * 1.55];
  const ticks = [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ].map(([i = 0, j = 0]) => `M${x + i * inner} ${y + j * inner}L${x + i * outer} ${y + j * outer}`);
  return (
    <path
      class="swing-touch"
      d={`M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0${ticks.join('')}`}
    />
  );
}

interface GapEnds {
  readonly from: Spot;
  readonly to: Spot;
  readonly gapM: number;
}

/** Where the gap between the body's side and what stands beside it is drawn, where the lesson is about one. */
function gapEnds(scene: Scene, projection: Projection): GapEnds | undefined {
  const gapM = gapBesideM(scene);
  if (gapM === undefined || scene.steered) return undefined;
  const { vehicle, swingSide, motion, reversing } = scene;
  const sign = signOf(swingSide);
  const start = poseAt(motion, 0);
  const aheadM = vehicle.wheelbaseM * (reversing ? 0.35 : 0.6);
  return {
    from: drawn(projection, onGround(start, aheadM, (sign * vehicle.widthM) / 2)),
    to: drawn(projection, onGround(start, aheadM, sign * (vehicle.widthM / 2 + gapM))),
    gapM,
  };
}

/** Where the words of the gap begin, at half their height; undefined where none are drawn. Pixels. */
export function gapTextAt(scene: Scene, projection: Projection): Spot | undefined {
  const ends = gapEnds(scene, projection);
  return ends && hasWords(ends) ? { x: ends.from.x + 6, y: (ends.from.y + ends.to.y) / 2 } : undefined;
}

/** A gap drawn narrower leaves its words on the lines beside it: then its number alone stands there. Pixels. */
const WORDS_FROM_PX = 7;

function hasWords({ from, to }: GapEnds): boolean {
  return Math.abs(to.y - from.y) >= WORDS_FROM_PX;
}

/** The gap between the body's side and what stands beside it, where the lesson is about one. */
export function GapLine({ scene, projection }: { scene: Scene; projection: Projection }) {
  const ends = gapEnds(scene, projection);
  if (!ends) return null;
  const { from, to, gapM } = ends;
  return (
    <Dimension
      upright
      side="right"
      from={from.y}
      to={to.y}
      across={from.x}
      text={hasWords(ends) ? `gap ${shortIn(drawnUnits.value, gapM, 'down')}` : ''}
    />
  );
}
