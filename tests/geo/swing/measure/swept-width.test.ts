import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureSwing } from '../../../../geo/swing/measure/measure-swing.ts';
import { sweptBand } from '../../../../geo/swing/measure/swept-band.ts';
import type { SwingVehicle } from '../../../../geo/swing/swing-vehicle.ts';
import { arc, driven, line } from '../../../support/swing-path.ts';
import { RAD, swingVehicle } from '../../../support/swing-vehicle.ts';

const sweptM = (vehicle: SwingVehicle, straightM: number, radiusM: number, turnDeg: number): number => {
  const path = { pieces: [line(straightM), arc(radiusM, turnDeg)] };
  return measureSwing(vehicle, driven(vehicle, path, 'rear axle'), path, 'rear axle').sweptWidthM;
};

/**
 * A vehicle that stops in its turn, rear axle on the path: at the end it lies along the path's tangent, half its width to
 * the inside, and the outer corner of its nose was farthest out as the turn began: (n − R sin θ) sin θ + (W/2 + R(1 − cos θ)) cos θ.
 */
function stoppedM(vehicle: SwingVehicle, radiusM: number, turnDeg: number): number {
  const turnRad = turnDeg * RAD;
  const noseM = vehicle.wheelbaseM + vehicle.frontOverhangM;
  const halfM = vehicle.widthM / 2;
  return (
    halfM +
    (noseM - radiusM * Math.sin(turnRad)) * Math.sin(turnRad) +
    (halfM + radiusM * (1 - Math.cos(turnRad))) * Math.cos(turnRad)
  );
}

describe('the swept width of a vehicle that stops in its turn', () => {
  it('counts where its body stands at the end', () => {
    for (const turnDeg of [2, 5, 10])
      expect(sweptM(swingVehicle(), 5, 6, turnDeg)).toBeCloseTo(stoppedM(swingVehicle(), 6, turnDeg), 3);
  });

  it('is no smaller with a rack narrower than the body: a corner between two places looked at is not missed', () => {
    const rack = { lengthM: 1.4146597035050656, widthM: 1.1802893057406103 };
    const bare = swingVehicle({
      wheelbaseM: 2,
      frontOverhangM: 0.3,
      rearOverhangM: 1.0451956436246297,
      widthM: 1.5,
      lockM: 4.289,
    });
    const widthM = sweptM(bare, 0.920665725384897, 2.8, 2);
    expect(widthM).toBeCloseTo(stoppedM(bare, 2.8, 2), 4);
    expect(sweptM({ ...bare, rack }, 0.920665725384897, 2.8, 2)).toBeGreaterThanOrEqual(widthM);
  });
});

describe('the band swept', () => {
  it('is never narrower than any place within it, and wider by no more than 2 mm of way', () => {
    const unit = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(unit, unit, fc.double({ min: -0.2, max: 0.2, noNaN: true }), (fromM, toM, slope) => {
        const band = sweptBand(0, 1);
        const lowM = -2;
        band.cover(fromM, 0, toM, slope * (toM - fromM));
        band.cover(fromM, lowM, toM, lowM);
        const widestM = Math.max(0, slope * (toM - fromM)) - lowM;
        expect(band.widestM()).toBeGreaterThanOrEqual(widestM - 1e-12);
        expect(band.widestM()).toBeLessThanOrEqual(widestM + 0.002 * Math.abs(slope));
      }),
    );
  });
});
