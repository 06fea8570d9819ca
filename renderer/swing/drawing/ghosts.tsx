import { useMemo } from 'preact/hooks';
import { fan } from '../../../geo/swing/lessons/fan.ts';
import type { Contact, Scene } from '../../../geo/swing/lessons/scene.ts';
import { poseAt } from '../../../geo/swing/motion/motion.ts';
import { lengthOf, sampleAt } from '../frames.ts';
import { outlineAt } from './corner.ts';
import { pathOf } from './paths.ts';

/** Positions of the still fan; more would run into each other. */
const FAN = 9;

/** Outlines of where the vehicle stands at the start and, as a still fan, on its way. In metres. */
export function Ghosts({
  scene,
  every,
  contact,
}: {
  scene: Scene;
  every: boolean;
  contact?: Contact | undefined;
}) {
  const outlines = useMemo(() => {
    const long = lengthOf(scene.motion);
    const poses = every ? fan(scene, FAN).map(({ pose }) => pose) : [poseAt(scene.motion, 0)];
    // on its way it gets as far as it touches
    if (!every) poses.push(contact?.pose ?? poseAt(scene.motion, sampleAt(scene.motion, long)));
    return poses.map((pose) => pathOf(outlineAt(scene.vehicle, pose), true));
  }, [scene, every, contact]);
  return (
    <>
      {outlines.map((d, i) => (
        <path key={d} class={i === 0 ? 'swing-ghost swing-ghost-start' : 'swing-ghost'} d={d} />
      ))}
    </>
  );
}
