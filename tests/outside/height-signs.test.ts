import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { height } from '../../geo/rules/limits/height.ts';
import { readLength } from '../../geo/units/read-length.ts';
import { askRoad, COACHBUILT } from '../support/ask.ts';

/** Traffic Signs Manual chapter 4 (2013), 7.11 and 7.12, and what follows from its two rules; sources in the file. */
const cases = z
  .object({
    published_examples: z.array(
      z.object({
        measured: z.string().optional(),
        signed: z.string().optional(),
        measured_m: z.number().optional(),
        signed_m: z.number().optional(),
      }),
    ),
    height_pairs_by_rule: z.array(
      z.object({
        imperial: z.string(),
        metric_m: z.number(),
        measured_from_m: z.number(),
        measured_to_m: z.number(),
      }),
    ),
    real_signs: z.array(z.object({ imperial: z.string(), metric_m: z.number() })),
  })
  .parse(JSON.parse(readFileSync(new URL('height-sign-pairs.json', import.meta.url), 'utf8')));

const INCH_M = 0.0254;

function metres(text: string): number {
  const reading = readLength(text);
  return reading.kind === 'value' ? reading.value : Number.NaN;
}

/** 7.11: at least 3 in less than measured, then down to a multiple of 3 in. */
function signedInches(measuredM: number): number {
  return Math.floor((Math.floor(measuredM / INCH_M + 1e-6) - 3) / 3) * 3;
}

/** 7.12 in closed form: the least that may be hidden is 8 cm. */
function signedTenths(measuredM: number): number {
  return Math.floor((Math.floor(measuredM * 100 + 1e-6) - 8) / 10);
}

describe('the height sign’s rule', () => {
  it('gives the manual’s published examples', () => {
    for (const { measured, signed, measured_m, signed_m } of cases.published_examples) {
      if (measured !== undefined && signed !== undefined)
        expect(signedInches(metres(measured)) * INCH_M).toBeCloseTo(metres(signed), 9);
      if (measured_m !== undefined && signed_m !== undefined)
        expect(signedTenths(measured_m) / 10).toBeCloseTo(signed_m, 9);
    }
  });

  it('gives every pair of figures the list has, somewhere between its two measured heights', () => {
    expect(cases.height_pairs_by_rule).toHaveLength(76);
    for (const pair of cases.height_pairs_by_rule)
      for (const measuredM of [pair.measured_from_m, pair.measured_to_m]) {
        // the list's millimetres are rounded: a hair to either side
        const around = [measuredM - 0.0015, measuredM, measuredM + 0.0015];
        const inches = Math.round(metres(pair.imperial) / INCH_M);
        expect(around.map(signedInches)).toContain(inches);
        expect(around.map(signedTenths)).toContain(Math.round(pair.metric_m * 10));
      }
  });
});

describe('what a sign hides is never credited', () => {
  const pairs = [...cases.height_pairs_by_rule, ...cases.real_signs].filter(({ metric_m }) => metric_m > 1.6);
  const askAt = (maxheight: string, neededM: number) =>
    askRoad(
      height,
      { maxheight },
      { card: { ...COACHBUILT, heightM: Math.round((neededM - 0.05) * 1e6) / 1e6 } },
    )[0];

  it('of both figures on one sign the lower decides: a vehicle that needs 1 cm more is barred', () => {
    for (const { imperial, metric_m } of pairs) {
      const lower = Math.min(metres(imperial), metric_m);
      const both = `${metric_m}; ${imperial}`;
      expect([both, askAt(both, lower + 0.01)?.level]).toEqual([both, 'barred']);
      expect([both, askAt(both, lower - 0.01)?.level]).toEqual([both, 'tight']);
      expect([both, askAt(both, lower - 0.16)?.level]).toEqual([both, undefined]);
    }
  });

  it('a vehicle between the sign and what was measured is barred, though it would pass', () => {
    for (const { imperial, measured_from_m } of cases.height_pairs_by_rule) {
      if (measured_from_m < 2) continue;
      expect([imperial, askAt(imperial, measured_from_m - 0.005)?.level]).toEqual([imperial, 'barred']);
    }
  });
});
