import { halve } from '../../earth/bisect.ts';
import { steeringForGap } from '../inverse.ts';
import { gapNeededM, outBesideM } from './gap-needed.ts';
import type { Scene } from './scene.ts';

/** Pulled straight first is looked for up to this, to this. Metres. */
const STRAIGHT_MOST_M = 15;
const STRAIGHT_FINE_M = 0.01;

/** What makes a run that touches pass what stands beside it. */
export interface Advice {
  /** the most lock, as a share of full lock, held from straight; 1: all of it */
  readonly lockShare: number;
  /** straight on by this much more before turning at the lock of the scene; undefined where that does not help */
  readonly straightM?: number;
}

/** Advice for a lesson beside something: a gap, and what is driven. */
export function adviseFor(scene: Scene, gapM: number): Advice {
  const { lockShare } = steeringForGap(scene.vehicle, gapM, scene.reversing ? 'nose' : 'tail');
  const car = scene.fixtures.find(({ kind }) => kind === 'parked car');
  if (!car || gapNeededM(scene) <= gapM) return { lockShare };
  const xs = car.line.map(({ xM }) => xM);
  const [from, to] = [Math.min(...xs), Math.max(...xs)];
  const onwards = scene.reversing ? -1 : 1;
  const passes = (byM: number): boolean => outBesideM(scene, from, to, onwards * byM) <= gapM;
  if (!passes(STRAIGHT_MOST_M)) return { lockShare };
  return { lockShare, straightM: halve(0, STRAIGHT_MOST_M, STRAIGHT_FINE_M, passes).inside };
}
