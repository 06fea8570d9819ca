import { describe, expect, it } from 'vitest';
import { buildScene } from '../../../../../geo/swing/lessons/build/build-scene.ts';
import { readScene } from '../../../../../geo/swing/lessons/read/read-scene.ts';
import { swingNow } from '../../../../../geo/swing/lessons/read/swing-now.ts';
import { LESSONS } from '../../../../../geo/swing/lessons/scene/lesson.ts';
import { DEFAULTS } from '../../../../../geo/swing/lessons/scene/settings.ts';
import { frameAt } from '../../../../../geo/swing/motion/frame.ts';
import { tryingRack } from '../../../../../geo/swing/swing-vehicle.ts';
import { COACH_BUILT } from '../../../../support/coach-built.ts';

describe('the centimetres on the drawing', () => {
  it.each(LESSONS)('are those that are read off the lesson: %s', (lesson) => {
    for (const rack of [false, true]) {
      const scene = buildScene(lesson, tryingRack(COACH_BUILT, { wanted: rack }), DEFAULTS[lesson]);
      for (let index = 0; index < scene.motion.xM.length; index += 7) {
        const { outM } = swingNow(scene, frameAt(scene.motion, scene.motion.travelM[index]!));
        const read = readScene(scene, frameAt(scene.motion, scene.motion.travelM[index]!).index);
        // where the wheel is straight again, the one shows the last turn's line and the other its own
        if (Math.abs(read.steerRad) < 1e-6) continue;
        expect(Math.max(0, outM)).toBeCloseTo(read.swingM, 3);
      }
    }
  });

  it('reach 46 cm at full lock, 75 with a rack of 70 cm as wide as the body', () => {
    const most = (rack: boolean) => {
      const scene = buildScene('leave', tryingRack(COACH_BUILT, { wanted: rack }), DEFAULTS.leave);
      const outs = Array.from(scene.motion.travelM, (m) => swingNow(scene, frameAt(scene.motion, m)).outM);
      return Math.max(...outs);
    };
    expect(most(false)).toBeCloseTo(0.459, 2);
    expect(most(true)).toBeCloseTo(0.747, 2);
  });
});
