import { useMemo } from 'preact/hooks';
import type { Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import { poseAt } from '../../../geo/swing/motion/motion.ts';
import { FixturesDrawn } from './fixtures.tsx';
import { Ghosts } from './ghosts.tsx';
import { KeyMarks } from './key-marks.tsx';
import { type Box, centredOn, matrixOf, middleOf, scaleToFit } from './projection.ts';
import { ScaleBar, scaleBarArea } from './scale-bar.tsx';
import type { Tone } from './tone.ts';
import { TracesDrawn } from './traces.tsx';

/** Left free round the scene. Pixels. */
const EDGE_PX = 16;

/** Pixels a metre at which a still drawing shows a whole scene. */
export function fanScale(scene: Scene, box: Box): number {
  return scaleToFit(scene.extent, box, EDGE_PX);
}

/**
 * A scene that stands still, to scale: positions on the way, and where the corners went. For paper and for a finding.
 * @param pxPerM where it is to be held against another drawing; without it all is seen
 */
export function FanDrawing({
  scene,
  widthPx,
  heightPx,
  pxPerM,
  tone = 'free',
}: {
  scene: Scene;
  widthPx: number;
  heightPx: number;
  pxPerM?: number;
  tone?: Tone;
}) {
  return useMemo(() => {
    const box = { widthPx, heightPx };
    const projection = centredOn(middleOf(scene.extent), pxPerM ?? fanScale(scene, box), box);
    return (
      <svg class="scene-drawing swing-fan" viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden="true">
        <g class="swing-world" transform={matrixOf(projection)}>
          <FixturesDrawn scene={scene} start={poseAt(scene.motion, 0)} />
          <Ghosts scene={scene} every />
          <TracesDrawn scene={scene} index={scene.motion.xM.length - 1} tone={tone} />
        </g>
        <KeyMarks scene={scene} projection={projection} box={box} areas={[scaleBarArea(box)]} />
        <ScaleBar pxPerM={projection.pxPerM} box={box} />
      </svg>
    );
  }, [scene, widthPx, heightPx, pxPerM, tone]);
}
