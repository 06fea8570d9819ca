import { useMemo } from 'preact/hooks';
import { largest } from '../../../geo/lists.ts';
import { type SwingNow, swingNow } from '../../../geo/swing/lessons/read/swing-now.ts';
import { swingsOf } from '../../../geo/swing/lessons/read/swings.ts';
import type { Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import type { Frame } from '../../../geo/swing/motion/frame.ts';
import { poseAt } from '../../../geo/swing/motion/motion.ts';
import { atTravelM, byHand, frameOf, type Shown } from '../state/shown.ts';
import { FixturesDrawn } from './fixtures.tsx';
import { Ghosts } from './ghosts.tsx';
import { KeyMarks } from './key-marks.tsx';
import { Lens, lensPlace } from './lens.tsx';
import { box, closer, projectionOf } from './look-at.ts';
import { MovingVehicle } from './moving-vehicle.tsx';
import { GapLine, gapTextAt, momentArea, SwingLine, TouchMark } from './overlay.tsx';
import type { Area } from './place-marks.ts';
import { type Box, matrixOf, type Projection } from './projection.ts';
import { footOnStage, ScaleBar, scaleBarArea } from './scale-bar.tsx';
import { SideLineDrawn } from './side-line.tsx';
import { toneOf } from './tone.ts';
import { TracesDrawn } from './traces.tsx';
import { VehiclePlan } from './vehicle-plan.tsx';

/**
 * One vehicle in its scene, to scale, as it stands at the moment shown. The words beside the drawing say the same.
 * @param still the fan of positions, for who wants no motion
 */
export function SceneDrawing({ of, still }: { of: Shown; still: boolean }) {
  const { scene, judged } = of;
  const frame = frameOf(of);
  const projection = projectionOf(of);
  const { widthPx, heightPx } = box.value;
  const lens = useMemo(
    () => lensPlace(scene, judged?.contact, projection, box.value),
    [of, projection.pxPerM, widthPx, heightPx],
  );
  // where all is seen nothing of it moves; from near it goes with the vehicle
  const marked = useMemo(
    () => (
      <KeyMarks
        scene={scene}
        projection={projection}
        box={box.value}
        areas={[...(closer.value === 1 ? keptFree(scene, projection, lens) : []), ...controlAreas(box.value)]}
      />
    ),
    [scene, lens, projection.pxPerM, projection.leftPx, projection.topPx, widthPx, heightPx],
  );
  if (!frame) return null;
  const now = swingNow(scene, frame);
  return (
    <svg
      class="scene-drawing"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      width={widthPx}
      height={heightPx}
      aria-hidden="true"
    >
      <g class="swing-world" transform={matrixOf(projection)}>
        <World of={of} frame={frame} ghosts={still && !byHand.value ? 'fan' : 'ends'} />
      </g>
      <g class="swing-overlay">
        <GapLine scene={scene} projection={projection} />
        <Moment of={of} now={lens && closer.value === 1 ? undefined : now} projection={projection} />
        {marked}
      </g>
      {lens && closer.value === 1 && (
        <Lens
          place={lens}
          middle={now.corner}
          pxPerM={projection.pxPerM}
          above={(near) => (
            <g class="swing-overlay">
              <Moment of={of} now={now} projection={near} />
            </g>
          )}
        >
          <World of={of} frame={frame} ghosts="none" />
        </Lens>
      )}
      <ScaleBar pxPerM={projection.pxPerM} box={box.value} footPx={footOnStage(box.value)} />
    </svg>
  );
}

/** Where buttons, the scale and the notice of a touch lie on the drawing. Pixels. */
function controlAreas(stage: Box): Area[] {
  const { widthPx, heightPx } = stage;
  return [
    scaleBarArea(stage, footOnStage(stage)),
    { x: widthPx - 260, y: heightPx - 54, widthPx: 260, heightPx: 54 },
    { x: widthPx * 0.1, y: 0, widthPx: widthPx * 0.8, heightPx: 48 },
  ];
}

/** The lens, and the words that are drawn at the vehicle. Pixels. */
function keptFree(scene: Scene, projection: Projection, lens: Area | undefined): Area[] {
  const words = gapTextAt(scene, projection);
  return [
    ...(lens ? [lens] : momentsOf(scene).map((now) => momentArea(now, projection))),
    ...(words ? [{ x: words.x, y: words.y - 12, widthPx: 92, heightPx: 24 }] : []),
  ];
}

/** Moments whose words stand on the drawing while the tail is well out. */
function momentsOf(scene: Scene): SwingNow[] {
  const { nowM } = swingsOf(scene);
  const most = largest(nowM);
  const out = [...nowM.keys()].filter((index) => nowM[index]! > WELL_OUT * most);
  const every = Math.max(1, Math.floor(out.length / MOMENTS));
  return out
    .filter((_, place) => place % every === 0)
    .map((index) => swingNow(scene, { pose: poseAt(scene.motion, index), index }));
}

/** Of the most that the tail comes out; and so many moments stand for all. */
const WELL_OUT = 0.85;
const MOMENTS = 6;

/** What stands there and the vehicle in it, in metres. */
function World({ of, frame, ghosts }: { of: Shown; frame: Frame; ghosts: 'none' | 'ends' | 'fan' }) {
  const { scene, card, judged } = of;
  const start = useMemo(() => poseAt(scene.motion, 0), [scene]);
  // the same nodes as long as the scene is the same, so that a frame costs only what moves
  const ground = useMemo(
    () => <FixturesDrawn scene={scene} start={start} />,
    [scene.fixtures, start.xM, start.yM],
  );
  const plan = useMemo(
    () => <VehiclePlan vehicle={scene.vehicle} mirrorsM={card.widthMirrorsM} />,
    [scene.vehicle, card],
  );
  const tone = isTouched(of) ? 'over' : toneOf(judged?.level === 'barred' ? undefined : judged?.level);
  return (
    <>
      {ground}
      <SideLineDrawn scene={scene} index={frame.index} />
      {ghosts !== 'none' && <Ghosts scene={scene} every={ghosts === 'fan'} contact={judged?.contact} />}
      <TracesDrawn scene={scene} index={frame.index} tone={tone} />
      <MovingVehicle vehicle={scene.vehicle} pose={frame.pose} steerRad={frame.steerRad}>
        {plan}
      </MovingVehicle>
    </>
  );
}

/** The centimetres of the moment, where they are wanted, and the touch. */
function Moment({ of, now, projection }: { of: Shown; now: SwingNow | undefined; projection: Projection }) {
  const contact = of.judged?.contact;
  const touched = isTouched(of);
  return (
    <>
      {now && <SwingLine now={now} touched={touched} projection={projection} />}
      {touched && contact && <TouchMark at={contact.at} projection={projection} />}
    </>
  );
}

/** It has got as far as it touches. */
function isTouched(of: Shown): boolean {
  const contact = of.judged?.contact;
  return contact !== undefined && atTravelM(of) >= contact.travelM - 1e-6;
}
