import { useMemo } from 'preact/hooks';
import { type SwingNow, swingNow } from '../../../geo/swing/lessons/read/swing-now.ts';
import type { Frame } from '../../../geo/swing/motion/frame.ts';
import { poseAt } from '../../../geo/swing/motion/motion.ts';
import { atTravelM, byHand, frameOf, type Shown } from '../state/shown.ts';
import { FixturesDrawn } from './fixtures.tsx';
import { Ghosts } from './ghosts.tsx';
import { Lens, lensPlace } from './lens.tsx';
import { box, closer, projectionOf } from './look-at.ts';
import { MovingVehicle } from './moving-vehicle.tsx';
import { GapLine, SwingLine, TouchMark } from './overlay.tsx';
import { matrixOf, type Projection } from './projection.ts';
import { ScaleBar } from './scale-bar.tsx';
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
      <ScaleBar pxPerM={projection.pxPerM} box={box.value} />
    </svg>
  );
}

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
