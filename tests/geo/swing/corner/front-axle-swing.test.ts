import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frontAxleSwingM } from '../../../../geo/swing/corner/front-axle-swing.ts';
import { arcFrom, straightFrom } from '../../../../geo/swing/motion/articulation.ts';
import { tailsOf } from '../../../../geo/swing/outline.ts';
import { RAD, swingVehicle } from '../../../support/swing-vehicle.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** dα/ds = 1/r − sin α / L by fourth-order Runge-Kutta, a second way to the same angle. */
function integrated(wheelbaseM: number, curvature: number, steerRad: number, travelM: number): number {
  const slope = (a: number) => curvature - Math.sin(a) / wheelbaseM;
  const steps = Math.max(1, Math.ceil(travelM / 0.02));
  const h = travelM / steps;
  let a = steerRad;
  for (let i = 0; i < steps; i++) {
    const k1 = slope(a);
    const k2 = slope(a + (h / 2) * k1);
    const k3 = slope(a + (h / 2) * k2);
    const k4 = slope(a + h * k3);
    a += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  return a;
}

describe('the front axle led along a path', () => {
  it('steers on an arc and on a straight as the equation of motion says', () => {
    fc.assert(
      fc.property(
        between(2.5, 6),
        between(1.05, 20),
        between(0, 40),
        between(-0.9, 0.6),
        (l, share, s, a) => {
          expect(arcFrom(l, a, 1 / (l * share), s)).toBeCloseTo(integrated(l, 1 / (l * share), a, s), 8);
          expect(straightFrom(l, a, s)).toBeCloseTo(integrated(l, 0, a, s), 8);
        },
      ),
    );
  });

  it('ends at the steady angle of the arc, sin δ = L / r', () => {
    expect(arcFrom(4.035, 0, 1 / 8, 200)).toBeCloseTo(Math.asin(4.035 / 8), 12);
  });

  it('stays on no arc as narrow as the wheelbase', () => {
    expect(frontAxleSwingM(swingVehicle(), 4, 1)).toBeNaN();
  });

  it('swings the tail as far as the farthest of a thousand places along the way', () => {
    fc.assert(
      fc.property(
        between(1.05, 8),
        between(1, 180),
        fc.option(fc.record({ lengthM: between(0.3, 1.2), widthM: between(1, 2.3) }), { nil: undefined }),
        (share, turnDeg, rack) => {
          const vehicle = swingVehicle(rack ? { rack } : {});
          const l = vehicle.wheelbaseM;
          const r = l * share;
          const turn = turnDeg * RAD;
          const arcM = r * turn;
          const end = arcM + 5 * l;
          let most = Number.NEGATIVE_INFINITY;
          for (let i = 0; i <= 1000; i++) {
            const s = (i / 1000) * end;
            const steer =
              s <= arcM ? arcFrom(l, 0, 1 / r, s) : straightFrom(l, arcFrom(l, 0, 1 / r, arcM), s - arcM);
            const path = Math.min(s / r, turn);
            const theta = path - steer;
            const yM =
              r * (1 - Math.cos(path)) + Math.max(0, s - arcM) * Math.sin(turn) - l * Math.sin(theta);
            for (const { aheadM, halfWidthM } of tailsOf(vehicle)) {
              const cornerM = yM + aheadM * Math.sin(theta) - halfWidthM * Math.cos(theta);
              most = Math.max(most, -cornerM - vehicle.widthM / 2);
            }
          }
          const swing = frontAxleSwingM(vehicle, r, turn);
          expect(swing).toBeGreaterThanOrEqual(most - 1e-9);
          expect(swing).toBeLessThanOrEqual(most + 0.0005);
        },
      ),
    );
  });
});
