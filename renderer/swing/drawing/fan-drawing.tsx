import { useMemo } from 'preact/hooks';
import type { Scene } from '../../../geo/swing/lessons/scene.ts';
import { poseAt } from '../../../geo/swing/motion.ts';
import { Ghosts } from './ghosts.tsx';
import { Ground } from './ground.tsx';
import { centredOn, matrixOf, middleOf, scaleToFit } from './projection.ts';
import { ScaleBar } from './scale-bar.tsx';
import { Traces } from './traces.tsx';

/** A scene that stands still, to scale: positions on the way, and where the corners went. For paper and for a finding. */
export function FanDrawing({
  scene,
  widthPx,
  heightPx,
}: {
  scene: Scene;
  widthPx: number;
  heightPx: number;
}) {
  return useMemo(() => {
    const box = { widthPx, heightPx };
    const projection = centredOn(middleOf(scene.extent), scaleToFit(scene.extent, box, 12), box);
    return (
      <svg class="swing-stage swing-fan" viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden="true">
        <g class="swing-world" transform={matrixOf(projection)}>
          <Ground scene={scene} start={poseAt(scene.motion, 0)} />
          <Ghosts scene={scene} every />
          <Traces scene={scene} index={scene.motion.xM.length - 1} tone="free" />
        </g>
        <ScaleBar pxPerM={projection.pxPerM} box={box} />
      </svg>
    );
  }, [scene, widthPx, heightPx]);
}
