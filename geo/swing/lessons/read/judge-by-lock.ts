import { gravestFirst } from '../../../report/level.ts';
import type { SwingVehicle } from '../../swing-vehicle.ts';
import type { Scene } from '../scene/scene.ts';
import { type Judged, judgeScene } from './judge.ts';
import { atTightest, atWidest } from './lock-doubt.ts';

/** A lesson for one vehicle, and what it comes to. */
interface JudgedScene {
  readonly scene: Scene;
  readonly judged: Judged;
}

/**
 * Judges a lesson. Where full lock is an estimate it is judged at both of its ends too, and the gravest counts: a tighter
 * lock swings farther, and a wider one may not get round.
 * @param sceneFor the lesson as it is built for a vehicle; @param marginM wanted to what is hard
 */
export function judgeByLock(
  sceneFor: (vehicle: SwingVehicle) => Scene,
  vehicle: SwingVehicle,
  marginM: number,
): JudgedScene {
  const scene = sceneFor(vehicle);
  const judged = judgeScene(scene, marginM);
  if (vehicle.lock.from !== 'estimate') return { scene, judged };
  const at = (of: SwingVehicle): Judged => judgeScene(sceneFor(of), marginM);
  const ends = [at(atTightest(vehicle)), at(atWidest(vehicle))] as const;
  const [gravest] = gravestFirst([judged, ...ends]);
  return { scene, judged: { ...judged, level: gravest?.level ?? judged.level, ends } };
}
