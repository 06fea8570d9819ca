import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { tailSwingM } from '../../geo/swing/circle.ts';
import { type Corner, fitCorner, largestRadiusM, radiusInRoomM } from '../../geo/swing/corner/fit-corner.ts';
import { bendWidthNeededM, fitCircle } from '../../geo/swing/corner/fit-ring.ts';
import { frontAxleSwingM } from '../../geo/swing/corner/front-axle-swing.ts';
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

  it('has to back up once to turn back between kerbs less than 16.4 m apart', () => {
    expect(fitCircle({ vehicle: coachBuilt, circleM: 16.3, clearanceM: 0.3 }).room).toBe('back up');
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

/** Radius and swing at 90°, clearance 0.15 m, kerbs of 1, 3, 6 and 10 m; both of each road's lanes as wide; same program. */
describe('a 7.4 m coach-built at a junction of two-lane roads', () => {
  const kerbs = [1, 3, 6, 10];
  const none = undefined;
  const table = [
    { laneM: 2.75, room: 'other lane on the exit', at: [none, none, none, none] },
    {
      laneM: 2.75,
      room: 'whole road',
      at: [
        [9.8, 0.26],
        [12.2, 0.22],
        [15.6, 0.17],
        [19.9, 0.14],
      ],
    },
    { laneM: 3, room: 'other lane on the exit', at: [none, none, [10.6, 0.25], [15.2, 0.18]] },
    {
      laneM: 3,
      room: 'whole road',
      at: [
        [11.9, 0.22],
        [14.2, 0.19],
        [17.4, 0.16],
        [21.7, 0.13],
      ],
    },
    {
      laneM: 3.25,
      room: 'other lane on the exit',
      at: [
        [5.8, 0.41],
        [8.7, 0.29],
        [12.3, 0.22],
        [16.7, 0.16],
      ],
    },
    {
      laneM: 3.25,
      room: 'whole road',
      at: [
        [13.8, 0.19],
        [16, 0.17],
        [19.3, 0.14],
        [23.5, 0.12],
      ],
    },
    {
      laneM: 3.65,
      room: 'other lane on the exit',
      at: [
        [8.8, 0.29],
        [11.3, 0.23],
        [14.6, 0.18],
        [19, 0.15],
      ],
    },
    {
      laneM: 3.65,
      room: 'whole road',
      at: [
        [16.8, 0.16],
        [19, 0.14],
        [22.2, 0.13],
        [26.3, 0.11],
      ],
    },
  ] as const;

  const corner = (laneM: number, kerbRadiusM: number): Corner => ({
    vehicle: swingVehicle(),
    turnRad: 90 * RAD,
    entry: { laneM, roadM: 2 * laneM },
    exit: { laneM, roadM: 2 * laneM },
    kerbRadiusM,
    clearanceM: 0.15,
  });

  for (const { laneM, room, at } of table)
    it(`turns from lanes of ${laneM} m taking ${room === 'whole road' ? 'the whole road' : `the ${room}`}`, () => {
      for (const [index, expected] of at.entries()) {
        const radiusM = radiusInRoomM(corner(laneM, kerbs[index] ?? 0), room);
        if (expected === undefined) {
          expect(radiusM).toBeUndefined();
          continue;
        }
        const [radius, swing] = expected;
        expect(Math.abs((radiusM ?? 0) - radius)).toBeLessThanOrEqual(0.051);
        expect(Math.abs(tailSwingM(swingVehicle(), radiusM ?? 0) - swing)).toBeLessThanOrEqual(0.0051);
      }
    });

  it('stays in its lane only where that is 3.65 m wide and the kerb 10 m', () => {
    for (const laneM of [2.75, 3, 3.25, 3.65])
      for (const kerbM of kerbs)
        expect(fitCorner(corner(laneM, kerbM)).room === 'own lane').toBe(laneM === 3.65 && kerbM === 10);
  });
});

describe('the gentle way, front axle on the arc', () => {
  it.each([
    [6.6, 0.2],
    [8, 0.166],
    [10, 0.134],
    [12, 0.113],
    [15, 0.091],
    [20, 0.069],
    [30, 0.047],
  ])('of %d m swings the tail of a 7.4 m coach-built out by %d m', (arcM, swingM) => {
    expect(Math.abs(frontAxleSwingM(swingVehicle(), arcM, 90 * RAD) - swingM)).toBeLessThanOrEqual(0.00051);
  });

  it('of 8 m is 0.16613 m and of 12 m 0.11294 m', () => {
    expect(frontAxleSwingM(swingVehicle(), 8, 90 * RAD)).toBeCloseTo(0.16613, 5);
    expect(frontAxleSwingM(swingVehicle(), 12, 90 * RAD)).toBeCloseTo(0.11294, 5);
  });
});
