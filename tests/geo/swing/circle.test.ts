import { describe, expect, it } from 'vitest';
import { frontWheelRad, radiusOfShareM } from '../../../geo/swing/circle.ts';
import { swingVehicle } from '../../support/swing-vehicle.ts';

describe('a vehicle on a circle', () => {
  it('turns its inner front wheel more than the outer one, and both alike straight on', () => {
    expect(frontWheelRad(swingVehicle(), 0.5, 0.9)).toBeGreaterThan(0.5);
    expect(frontWheelRad(swingVehicle(), 0.5, -0.9)).toBeLessThan(0.5);
    expect(frontWheelRad(swingVehicle(), 0, 0.9)).toBe(0);
  });

  it('goes round full lock’s radius with all of the lock, and round none without', () => {
    expect(radiusOfShareM(swingVehicle(), 1)).toBeCloseTo(4.985, 9);
    expect(radiusOfShareM(swingVehicle(), 0)).toBe(Number.POSITIVE_INFINITY);
  });
});
