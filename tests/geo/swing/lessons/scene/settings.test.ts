import { describe, expect, it } from 'vitest';
import { LESSONS } from '../../../../../geo/swing/lessons/scene/lesson.ts';
import { DEFAULTS, defaultsOn, isChosen, rangesOf } from '../../../../../geo/swing/lessons/scene/settings.ts';
import { coachBuilt, sampleVehicles } from '../vehicles.ts';

describe('what a lesson begins with', () => {
  it('lies within its sliders, with any sample vehicle that fits its lane', () => {
    for (const lesson of LESSONS)
      for (const vehicle of sampleVehicles) {
        const ranges = rangesOf(lesson, vehicle);
        for (const key of ['gapM', 'lockShare', 'straightM', 'kerbRadiusM', 'openingM'] as const) {
          expect(DEFAULTS[lesson][key]).toBeGreaterThanOrEqual(ranges[key].from);
          expect(DEFAULTS[lesson][key]).toBeLessThanOrEqual(ranges[key].to);
        }
      }
  });

  it('is the same in a mirror where one drives on the other side', () => {
    for (const lesson of LESSONS) {
      const [left, right] = [defaultsOn(lesson, 'left'), defaultsOn(lesson, 'right')];
      expect(right).toEqual({
        ...left,
        driveSide: 'right',
        turnSide: left.turnSide === 'left' ? 'right' : 'left',
      });
      expect(left).toBe(DEFAULTS[lesson]);
    }
  });
});

describe('a setting', () => {
  it('is a length or share to slide, or a choice among words', () => {
    const chosen = (Object.keys(DEFAULTS.leave) as (keyof typeof DEFAULTS.leave)[]).filter(isChosen);
    expect(chosen.sort()).toEqual(['beside', 'driveSide', 'turnSide']);
    expect(Object.keys(rangesOf('leave', coachBuilt)).length + chosen.length).toBe(
      Object.keys(DEFAULTS.leave).length,
    );
  });
});
