import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { frontCornerRadiusM, tailSwingM } from '../../geo/swing/circle.ts';
import { measureSwing } from '../../geo/swing/measure/measure-swing.ts';
import { straightFrom } from '../../geo/swing/motion/articulation.ts';
import { layPath } from '../../geo/swing/motion/beside-path.ts';
import { follow } from '../../geo/swing/motion/follow.ts';
import { cardWarnings } from '../../geo/vehicle/card-warnings.ts';
import { COACHBUILT } from '../support/ask.ts';
import { enterRing, RING_OUTER_M, RING_WIDTH_M } from '../support/enter-ring.ts';
import { innerSideRadiusM, offTrackingM, outerWheelRadiusM } from '../support/steady-circle.ts';
import { DEG, RAD, swingVehicle } from '../support/swing-vehicle.ts';

/*
 * turning-published.json: published figures of turning and swing, each with its source and whether its text was seen.
 * "From memory" there means the figure has not been read again.
 */

const FOOT_M = 0.3048;

interface Published {
  readonly id: string;
  readonly kind: string;
  readonly vehicle?: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected?: unknown;
  readonly expected_ft?: number;
  readonly expected_m?: number;
  readonly oracle_ft?: number;
  readonly oracle_m?: number;
  readonly tolerance?: unknown;
  readonly tolerance_ft?: number;
  readonly tolerance_m?: number;
  readonly source: string;
  readonly seen: string;
}

const { cases } = JSON.parse(
  readFileSync(resolve(import.meta.dirname, 'turning-published.json'), 'utf8'),
) as { readonly cases: readonly Published[] };

const ofKind = (...kinds: string[]) => cases.filter(({ kind }) => kinds.includes(kind));
const figure = (value: number | undefined): number => value ?? Number.NaN;
const feet = (one: Published, name: string): number => figure(one.inputs[`${name}_ft`]) * FOOT_M;
const metres = (one: Published, name: string): number => figure(one.inputs[`${name}_m`]);

/** A vehicle of the table, its front axle's radius there, and the rear axle's that belongs to it. */
function tabled(one: Published) {
  const vehicle = swingVehicle({
    wheelbaseM: feet(one, 'wheelbase'),
    frontOverhangM: feet(one, 'front_overhang') || 1,
    rearOverhangM: feet(one, 'rear_overhang') || 1,
    widthM: feet(one, 'width'),
    trackM: feet(one, 'width'),
  });
  const frontM = feet(one, 'front_axle_centre_radius');
  return { vehicle, frontM, rearM: frontM - offTrackingM(vehicle.wheelbaseM, frontM) };
}

function holds(one: Published, gotM: number): void {
  const unit = one.expected_ft === undefined ? 1 : FOOT_M;
  const published = figure(one.expected_ft ?? one.expected_m) * unit;
  const tolerance = figure(one.tolerance_ft ?? one.tolerance_m) * unit;
  expect(Math.abs(gotM - published), one.source).toBeLessThanOrEqual(tolerance + 1e-12);
  const computed = one.oracle_ft ?? one.oracle_m;
  if (computed !== undefined) expect(gotM / unit).toBeCloseTo(computed, 3);
}

const all = new Set<string>();
const each = (kind: string, ...more: string[]): readonly Published[] => {
  const found = ofKind(kind, ...more);
  for (const { id } of found) all.add(id);
  return found;
};

describe('published turning radii', () => {
  it.each(each('min_inside_radius_from_centreline_radius'))(
    '$id: inside radius of $vehicle [$source; $seen]',
    (one) => {
      const { vehicle, frontM, rearM } = tabled(one);
      holds(one, innerSideRadiusM(vehicle, rearM));
      // and driven: the front axle twice round
      const path = { pieces: [{ kind: 'arc', radiusM: frontM, turnRad: 4 * Math.PI } as const] };
      const motion = follow(vehicle, path, 'front axle');
      if (!motion.ok) throw new Error(motion.error.message);
      const last = motion.value.xM.length - 1;
      const drivenM = Math.hypot(motion.value.xM[last] ?? 0, (motion.value.yM[last] ?? 0) - frontM);
      expect(drivenM).toBeCloseTo(rearM, 4);
    },
  );

  it.each(each('outer_front_wheel_radius'))('$id: outer front wheel of $vehicle [$source; $seen]', (one) => {
    const { vehicle, rearM } = tabled(one);
    holds(one, outerWheelRadiusM(vehicle, rearM));
  });

  it.each(each('outer_front_corner_radius'))(
    '$id: outer front corner of $vehicle [$source; $seen]',
    (one) => {
      const { vehicle, rearM } = tabled(one);
      holds(one, frontCornerRadiusM(vehicle, rearM));
    },
  );

  it.each(each('steady_state_off_tracking'))('$id: steady off-tracking [$source; $seen]', (one) => {
    const radiusM = metres(one, 'front_axle_centre_radius');
    const vehicle = swingVehicle({ wheelbaseM: metres(one, 'wheelbase') });
    holds(one, offTrackingM(vehicle.wheelbaseM, radiusM));
    const path = { pieces: [{ kind: 'arc', radiusM, turnRad: 4 * Math.PI } as const] };
    const motion = follow(vehicle, path, 'front axle');
    if (!motion.ok) throw new Error(motion.error.message);
    holds(one, measureSwing(vehicle, motion.value, path, 'front axle').offTrackingM);
  });

  it.each(each('approximate_widening'))('$id: widening of a bend [$source; $seen]', (one) => {
    const [wheelbaseM, radiusM] = [metres(one, 'wheelbase'), metres(one, 'radius')];
    holds(one, offTrackingM(wheelbaseM, radiusM));
    expect(wheelbaseM ** 2 / (2 * radiusM)).toBeCloseTo(figure(one.expected_m), 3);
  });

  it.each(each('tractrix_straight'))('$id: the tractrix [$source; $seen]', (one) => {
    const wheelbaseM = metres(one, 'wheelbase');
    const alpha = straightFrom(
      wheelbaseM,
      figure(one.inputs['initial_articulation_deg']) * RAD,
      metres(one, 'front_travel'),
    );
    const want = one.expected as { readonly alpha_deg: number; readonly rear_axle_offset_m: number };
    expect(Math.abs(alpha * DEG - want.alpha_deg)).toBeLessThan(0.001);
    expect(Math.abs(wheelbaseM * Math.sin(alpha) - want.rear_axle_offset_m)).toBeLessThan(0.0001);
  });
});

describe('published tests and limits', () => {
  it.each(each('annulus'))('$id: the ring [$source; $seen]', (one) => {
    expect([RING_OUTER_M, RING_WIDTH_M]).toEqual([
      metres(one, 'outer_radius'),
      metres(one, 'max_ring_width'),
    ]);
    holds(one, RING_OUTER_M - RING_WIDTH_M);
  });

  it.each(each('rear_swing_out_on_entry_to_12.5m_circle'))(
    '$id: $vehicle drives into the ring, $expected [$source; $seen]',
    (one) => {
      const vehicle = swingVehicle({
        wheelbaseM: metres(one, 'wheelbase'),
        frontOverhangM: metres(one, 'front_overhang'),
        rearOverhangM: metres(one, 'rear_overhang'),
        widthM: metres(one, 'width'),
      });
      const entry = enterRing(vehicle, metres(one, 'outer_circle'));
      if (!entry.ok) throw new Error(entry.error.message);
      expect(Math.abs(entry.value.tail.swingM - figure(one.oracle_m))).toBeLessThan(0.001);
      expect(entry.value.tail.swingM).toBeLessThanOrEqual(Number(/[\d.]+/.exec(String(one.expected))?.[0]));
    },
  );

  it.each(each('max_rear_overhang_uk'))('$id: the longest rear overhang [$source; $seen]', (one) => {
    const wheelbaseM = metres(one, 'wheelbase');
    const warned = (rearOverhangM: number) =>
      cardWarnings({ ...COACHBUILT, wheelbaseM, rearOverhangM }, 'metric').some((text) =>
        text.includes('60 %'),
      );
    holds(one, 0.6 * wheelbaseM);
    expect([warned(figure(one.expected_m)), warned(figure(one.expected_m) + 0.02)]).toEqual([false, true]);
  });

  // rules of other countries that no part of the program uses yet: the figures agree with themselves
  it.each(each('max_rear_overhang_au', 'max_rear_overhang_us_wa'))('$id [$source; $seen]', (one) => {
    const wheelbaseM = one.inputs['wheelbase_m'];
    holds(one, wheelbaseM === undefined ? 15 * FOOT_M : Math.min(3.7, 0.6 * wheelbaseM));
  });

  it.each(each('test_path_arc_length'))('$id: length of the test path [$source; $seen]', (one) => {
    const turnRad = figure(one.inputs['angle_deg']) * RAD;
    holds(one, layPath({ pieces: [{ kind: 'arc', radiusM: feet(one, 'radius'), turnRad }] }).lengthM);
  });

  it.each(each('centreline_to_outer_kerb'))('$id: circle between kerbs [$source; $seen]', (one) => {
    holds(one, 2 * (metres(one, 'centreline_radius') + metres(one, 'road_width') / 2));
  });

  it.each(each('tail_swing_upper_bound'))('$id: a school bus swings up to 3 ft [$source; $seen]', (one) => {
    const { vehicle, rearM } = tabled(one);
    const swingFt = tailSwingM(vehicle, rearM) / FOOT_M;
    expect(swingFt).toBeCloseTo(figure(one.oracle_ft), 3);
    expect(swingFt).toBeGreaterThan(1.5);
    expect(swingFt).toBeLessThanOrEqual(3);
  });

  it('are 35 and none is left out', () => {
    expect([cases.length, all.size]).toEqual([35, 35]);
  });
});

// computed three ways: closed form, an independent program and a second of its kind; no measured value is published
describe('the 7.4 m coach-built', () => {
  const vehicle = swingVehicle();
  const withRack = swingVehicle({ rack: { lengthM: 0.7, widthM: 2.32 } });
  const driven = (guide: 'front axle' | 'rear axle') => {
    const path = {
      pieces: [
        { kind: 'line', lengthM: 30 } as const,
        { kind: 'arc', radiusM: 8, turnRad: Math.PI / 2 } as const,
        { kind: 'line', lengthM: 40 } as const,
      ],
    };
    const motion = follow(vehicle, path, guide);
    if (!motion.ok) throw new Error(motion.error.message);
    return measureSwing(vehicle, motion.value, path, guide).tail.swingM;
  };

  it('swings 0.459 m at full lock, 0.747 m with a rack of 0.70 m over its full width', () => {
    expect(tailSwingM(vehicle, 4.985)).toBeCloseTo(0.459, 3);
    expect(tailSwingM(withRack, 4.985)).toBeCloseTo(0.747, 3);
  });

  it('swings 0.166 m on an 8 m arc with the front axle on it, 0.314 m with the rear axle', () => {
    expect(driven('front axle')).toBeCloseTo(0.166, 3);
    expect(driven('rear axle')).toBeCloseTo(0.314, 3);
  });
});
