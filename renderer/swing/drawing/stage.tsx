import { useMemo } from 'preact/hooks';
import { poseAt } from '../../../geo/swing/motion/motion.ts';
import { box, closer, projectionOf } from '../look-at.ts';
import { atTravelM, byHand, frameOf, type Shown } from '../state.ts';
import { drawnLine, sideLineAt, swingNow } from './corner.ts';
import { Ghosts } from './ghosts.tsx';
import { Ground } from './ground.tsx';
import { Lens, lensPlace } from './lens.tsx';
import { MovingVehicle } from './moving-vehicle.tsx';
import { GapLine, SwingLine, TouchMark } from './overlay.tsx';
import { pathOf } from './paths.ts';
import { matrixOf } from './projection.ts';
import { ScaleBar } from './scale-bar.tsx';
import { Traces } from './traces.tsx';
import { VehiclePlan } from './vehicle-plan.tsx';

/**
 * One vehicle in its scene, to scale, as it stands at the moment shown. The words beside the drawing say the same.
 * @param still the fan of positions, for who wants no motion
 */
export function Stage({ of, still }: { of: Shown; still: boolean }) {
  const { scene, card } = of;
  const frame = frameOf(of);
  const projection = projectionOf(of);
  const { widthPx, heightPx } = box.value;
  const start = useMemo(() => poseAt(scene.motion, 0), [scene]);
  // the same nodes as long as the scene is the same, so that a frame costs only what moves
  const ground = useMemo(() => <Ground scene={scene} start={start} />, [scene.fixtures, start.xM, start.yM]);
  const plan = useMemo(
    () => <VehiclePlan vehicle={scene.vehicle} mirrorsM={card.widthMirrorsM} />,
    [scene.vehicle, card],
  );
  const away = useMemo(
    () => lensPlace(of, projection, box.value),
    [of, projection.pxPerM, widthPx, heightPx],
  );
  if (!frame) return null;
  const touched = of.contact !== undefined && atTravelM(of) >= of.contact.travelM - 1e-6;
  const tone = touched ? 'over' : of.decision?.level === 'tight' ? 'close' : 'free';
  const now = swingNow(scene, frame);
  const line = drawnLine(scene.vehicle, sideLineAt(scene, frame.index), scene.reversing);
  const world = (ghosts: boolean) => (
    <>
      {ground}
      <path class="swing-line" d={pathOf(line)} />
      {ghosts && <Ghosts scene={scene} every={still && !byHand.value} contact={of.contact} />}
      <Traces scene={scene} index={frame.index} tone={tone} />
      <MovingVehicle vehicle={scene.vehicle} pose={frame.pose} steerRad={frame.steerRad}>
        {plan}
      </MovingVehicle>
    </>
  );
  return (
    <svg
      class="swing-stage"
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      width={widthPx}
      height={heightPx}
      aria-hidden="true"
    >
      <g class="swing-world" transform={matrixOf(projection)}>
        {world(true)}
      </g>
      <g class="swing-overlay">
        <GapLine scene={scene} projection={projection} />
        {(!away || closer.value > 1) && <SwingLine now={now} touched={touched} projection={projection} />}
        {touched && of.contact && <TouchMark at={of.contact.at} projection={projection} />}
      </g>
      {away && closer.value === 1 && (
        <Lens
          place={away}
          middle={now.corner}
          pxPerM={projection.pxPerM}
          above={(near) => (
            <g class="swing-overlay">
              <SwingLine now={now} touched={touched} projection={near} />
              {touched && of.contact && <TouchMark at={of.contact.at} projection={near} />}
            </g>
          )}
        >
          {world(false)}
        </Lens>
      )}
      <ScaleBar pxPerM={projection.pxPerM} box={box.value} />
    </svg>
  );
}
