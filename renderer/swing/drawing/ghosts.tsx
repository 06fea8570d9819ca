import { useMemo } from 'preact/hooks';
import type { Contact } from '../../../geo/swing/lessons/read/contact.ts';
import { fanOf } from '../../../geo/swing/lessons/read/fan.ts';
import type { Scene } from '../../../geo/swing/lessons/scene/scene.ts';
import { poseAt } from '../../../geo/swing/motion/motion.ts';
import { outlineOnGround } from '../../../geo/swing/motion/outline-on-ground.ts';
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
    const { motion, vehicle } = scene;
    // on its way it gets as far as it touches
    const end = contact?.pose ?? poseAt(motion, motion.xM.length - 1);
    const poses = every ? fanOf(scene, FAN) : [poseAt(motion, 0), end];
    return poses.map((pose) => pathOf(outlineOnGround(vehicle, pose), 'closed'));
  }, [scene, every, contact]);
  return (
    <>
      {outlines.map((d, i) => (
        <path key={d} class={i === 0 ? 'swing-ghost swing-ghost-start' : 'swing-ghost'} d={d} />
      ))}
    </>
  );
}
