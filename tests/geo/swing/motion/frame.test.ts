import { describe, expect, it } from 'vitest';
import { driveLegs } from '../../../../geo/swing/lessons/build/legs.ts';
import { frameAt, lengthOf } from '../../../../geo/swing/motion/frame.ts';
import { ORIGIN } from '../../../../geo/swing/motion/motion.ts';
import { swingVehicle } from '../../../support/swing-vehicle.ts';

const legs = [
  { steerRad: 0, travelM: 2 },
  { steerRad: 0.5, travelM: 3 },
];
const motion = driveLegs(swingVehicle(), { start: ORIGIN, legs });

describe('the moment shown', () => {
  it('lies between two samples, so that the vehicle glides', () => {
    expect(frameAt(motion, 1.013).pose.xM).toBeCloseTo(1.013, 9);
    expect(lengthOf(motion)).toBeCloseTo(5, 9);
  });

  it('has the wheel as it is turned from there on, where it is turned standing', () => {
    expect(frameAt(motion, 1.99).steerRad).toBe(0);
    expect(frameAt(motion, 2).steerRad).toBe(0.5);
  });

  it('stays at the ends beyond them', () => {
    expect(frameAt(motion, -1).pose).toEqual(frameAt(motion, 0).pose);
    expect(frameAt(motion, 99).pose).toEqual(frameAt(motion, 5).pose);
    expect(frameAt(motion, 99).index).toBe(motion.travelM.length - 1);
  });
});
