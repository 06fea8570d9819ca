import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { swing } from '../../../../geo/rules/corners/swing.ts';
import { turn } from '../../../../geo/rules/corners/turn.ts';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { ask, COACHBUILT } from '../../../support/ask.ts';
import { driveOn, testMap } from '../../../support/drive-on.ts';
import { shownInSwing } from '../../../support/shown-in-swing.ts';

const card = (change: Partial<VehicleCard>): VehicleCard => ({
  ...COACHBUILT,
  widthM: 2.32,
  lengthM: 7.4,
  wheelbaseM: 4.035,
  frontOverhangM: 0.945,
  rearOverhangM: 2.42,
  rearAxleRadiusMinM: 4.985,
  ...change,
});
const LONG = card({});
const CARDS = [
  LONG,
  card({ rack: { lengthM: 0.7, widthM: 2.2, fitted: true } }),
  card({ measured: { rearWheelCircleM: 8.6 } }),
];

describe('a turn of a drive, opened in Swing', () => {
  it('has there the figures of its row, whatever the corner, and its tail comes out that far as it is driven', () => {
    let met = 0;
    fc.assert(
      fc.property(
        fc.record({
          deg: fc.integer({ min: 35, max: 150 }),
          left: fc.boolean(),
          widthM: fc.double({ min: 3, max: 9, noNaN: true }),
          intoM: fc.double({ min: 3, max: 9, noNaN: true }),
          country: fc.constantFrom('GB', 'DE'),
          mini: fc.boolean(),
          vehicle: fc.constantFrom(...CARDS),
        }),
        ({ deg, left, widthM, intoM, country, mini, vehicle }) => {
          const rad = (deg * Math.PI) / 180;
          const [x, y] = [100 * Math.cos(rad), (left ? 100 : -100) * Math.sin(rad)];
          const tags = (m: number) => ({ highway: 'residential', width: m.toFixed(1) });
          const map = testMap(
            [
              { id: 1, nodes: ['-1,0', '0,0'], tags: tags(widthM) },
              { id: 2, nodes: ['0,0', '1,0'], tags: tags(widthM) },
              { id: 3, nodes: ['0,0', `${x / 100},${y / 100}`], tags: tags(intoM) },
            ],
            mini ? { '0,0': { highway: 'mini_roundabout' } } : {},
          );
          const drive = driveOn(map, [1, 3]);
          const found = [
            ...ask(turn, map, drive, vehicle, { country }),
            ...ask(swing, map, drive, vehicle, { country }),
          ];
          for (const finding of found) {
            met++;
            const shown = shownInSwing(finding, vehicle);
            expect(shown.turn).toBe(finding.turn);
            expect(shown.missing, `${finding.say} | ${shown.told}`).toEqual([]);
            expect(Math.abs(shown.drivenM - (finding.turn?.swing.planM ?? Number.NaN))).toBeLessThan(0.004);
          }
        },
      ),
      { numRuns: 24, seed: 7 },
    );
    expect(met).toBeGreaterThan(8);
  });

  it('right at a mini-roundabout has no kerb beside its tail, neither in the row nor in the drawing', () => {
    const road = { highway: 'residential', width: '6' };
    const map = testMap(
      [
        { id: 1, nodes: ['-1,0', '0,0'], tags: road },
        { id: 2, nodes: ['0,0', '1,0'], tags: road },
        { id: 3, nodes: ['0,0', '0,-1'], tags: road },
      ],
      { '0,0': { highway: 'mini_roundabout', diameter: '18' } },
    );
    const [found] = ask(swing, map, driveOn(map, [1, 3]), LONG, { country: 'GB' });
    const shown = found && shownInSwing(found, LONG);
    expect(found).toMatchObject({ kind: 'circle' });
    expect(found?.say).not.toMatch(/kerb/);
    expect(shown?.over.filter(({ part }) => 'end' in part && part.end === 'rear')).toEqual([]);
  });
});
