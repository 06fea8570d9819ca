import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tailSwingM } from '../../geo/swing/circle.ts';
import { largestRadiusM } from '../../geo/swing/corner/fit-corner.ts';
import { bendWidthNeededM, fitCircle } from '../../geo/swing/corner/fit-ring.ts';
import { RAD, swingVehicle } from '../support/swing-vehicle.ts';

/*
 * turning-computed.json, `corner_fit`: largest steady radius round a junction corner, computed by an independent program
 * (a scan over radii with every corner of the body driven round). Tolerance stated there: 0.02 m of radius.
 */

interface Case {
  readonly id: string;
  readonly vehicle: string;
  readonly inputs: Readonly<Record<string, number>> & { readonly level: string };
  readonly results: {
    readonly fits: boolean;
    readonly largest_rear_axle_radius_m: number | null;
    readonly tail_swing_line_m: number | null;
  };
}

const { corner_fit: cases } = JSON.parse(
  readFileSync(resolve(import.meta.dirname, 'turning-computed.json'), 'utf8'),
) as { readonly corner_fit: readonly Case[] };

describe('largest radius round a junction corner, as an independent program found it', () => {
  it('all 54 cases are there', () => {
    expect(cases).toHaveLength(54);
    expect(cases.some(({ results }) => results.fits)).toBe(true);
    expect(cases.some(({ results }) => !results.fits)).toBe(true);
  });

  for (const { id, vehicle: name, inputs, results } of cases)
    it(`${id}: ${name}, ${inputs['turn_deg']}°, ${inputs.level}, lane ${inputs['entry_width_m']} into ${inputs['exit_width_m']}, kerb ${inputs['inner_kerb_radius_m']}`, () => {
      const input = (key: string): number => inputs[key] ?? Number.NaN;
      const vehicle = swingVehicle({
        wheelbaseM: input('wheelbase_m'),
        frontOverhangM: input('front_overhang_m'),
        rearOverhangM: input('rear_overhang_m'),
        widthM: input('width_m'),
        lockM: input('rear_axle_radius_min_m'),
      });
      const turnRad = input('turn_deg') * RAD;
      const radiusM = largestRadiusM({
        vehicle,
        turnRad,
        entryM: input('entry_width_m'),
        exitM: input('exit_width_m'),
        kerbRadiusM: input('inner_kerb_radius_m'),
        clearanceM: input('clearance_m'),
      });
      if (!results.fits) return expect(radiusM).toBeUndefined();
      expect(radiusM).toBeDefined();
      expect(Math.abs((radiusM ?? 0) - (results.largest_rear_axle_radius_m ?? 0))).toBeLessThanOrEqual(0.02);
      expect(
        Math.abs(tailSwingM(vehicle, radiusM ?? 0, turnRad) - (results.tail_swing_line_m ?? 0)),
      ).toBeLessThanOrEqual(0.001);
    });
});

/** Worked figures for a 7.4 m coach-built at a clearance of 0.3 m, computed by the same independent program; shown to 0.1 m. */
describe('a 7.4 m coach-built', () => {
  const coachBuilt = swingVehicle({});

  it.each([
    [28, 11.6, 0.23],
    [24, 9.4, 0.27],
    [20, 7.2, 0.34],
    [18, 6.0, 0.4],
  ])(
    'goes round in a circle %d m across at a radius of %d m, its tail out by %d m',
    (circleM, radius, swing) => {
      const fit = fitCircle({ vehicle: coachBuilt, circleM, clearanceM: 0.3 });
      expect(fit.room).toBe('own lane');
      expect(Math.abs(fit.rearAxleRadiusM - radius)).toBeLessThanOrEqual(0.051);
      expect(Math.abs(tailSwingM(coachBuilt, fit.rearAxleRadiusM) - swing)).toBeLessThanOrEqual(0.0051);
    },
  );

  it('needs a shunt to turn back between kerbs less than 16.4 m apart', () => {
    expect(fitCircle({ vehicle: coachBuilt, circleM: 16.3, clearanceM: 0.3 }).room).toBe('shunt');
    expect(fitCircle({ vehicle: coachBuilt, circleM: 16.45, clearanceM: 0.3 }).room).toBe('own lane');
  });

  it.each([
    [5, 6.4],
    [6, 4.7],
    [7, 4.4],
    [8, 4.3],
    [10, 4.0],
    [12, 3.9],
    [15, 3.7],
  ])('needs, round a hairpin of %d m to its centre line, %d m of road', (centreRadiusM, widthM) => {
    expect(Math.abs(bendWidthNeededM(coachBuilt, centreRadiusM, 0.3) - widthM)).toBeLessThanOrEqual(0.051);
  });

  it.each([
    [0.5, 4.8],
    [1, 4.6],
    [3, 4.4],
  ])(
    'gets round the corner of a single-track road with a kerb of %d m from a width of %d m',
    (kerbRadiusM, widthM) => {
      const least = (entryM: number) =>
        largestRadiusM({
          vehicle: coachBuilt,
          turnRad: Math.PI / 2,
          entryM,
          exitM: entryM,
          kerbRadiusM,
          clearanceM: 0.15,
        });
      // the worked figure is rounded to 0.1 m
      expect(least(widthM + 0.05)).toBeDefined();
      expect(least(widthM - 0.2)).toBeUndefined();
    },
  );
});
