import { describe, expect, it } from 'vitest';
import { buildScene } from '../../../../../geo/swing/lessons/build/build-scene.ts';
import { judgeScene } from '../../../../../geo/swing/lessons/read/judge.ts';
import { judgeByLock } from '../../../../../geo/swing/lessons/read/judge-by-lock.ts';
import type { LessonId } from '../../../../../geo/swing/lessons/scene/lesson.ts';
import { DEFAULTS, type LessonSettings } from '../../../../../geo/swing/lessons/scene/settings.ts';
import { sayDecides, sayOutcome } from '../../../../../geo/swing/lessons/tell/say-decides.ts';
import { coachBuilt, withRack } from '../vehicles.ts';

const MARGIN_M = 0.15;
const judge = (lesson: LessonId, settings: Partial<LessonSettings>, vehicle = coachBuilt) =>
  judgeScene(buildScene(lesson, vehicle, { ...DEFAULTS[lesson], ...settings }), MARGIN_M);

describe('pulling away from a wall', () => {
  it.each([
    [0.3, 'barred', -0.159],
    [0.5, 'tight', 0.041],
    [0.7, 'care', 0.241],
  ] as const)('with %s m beside it is %s', (gapM, level, spareM) => {
    const judged = judge('leave', { gapM });
    expect(judged.level).toBe(level);
    expect(judged.decides).toMatchObject({ kind: 'gap', gapM });
    expect(judged.decides.kind === 'gap' ? judged.decides.spareM : Number.NaN).toBeCloseTo(spareM, 3);
  });

  it('is decided by the gap even where it is touched: that is what is lacking', () => {
    const judged = judge('leave', { gapM: 0.3 });
    expect(judged.contact?.fixture.role).toBe('wall');
    expect(judged.decides.kind).toBe('gap');
  });
});

describe('a lesson that no one gap decides', () => {
  it('is decided by what is touched, be the gap beside it ever so wide', () => {
    const judged = judge('reverse', { gapM: 2.5, lockShare: 1, straightM: 8 });
    expect(judged.level).toBe('barred');
    expect(judged.decides.kind === 'touch' ? judged.decides.contact.fixture.role : undefined).toBe(
      'hedge across the aisle',
    );
  });

  it('is decided by the line that a corner passes farthest, and is tight then', () => {
    const judged = judge('side-road', { lockShare: 1, kerbRadiusM: 3 });
    expect(judged.contact).toBeUndefined();
    expect(judged.level).toBe('tight');
    expect(judged.decides.kind === 'over' ? judged.decides.over.fixture.kind : undefined).toBe('lane line');
    expect(judged.over?.overM).toBeGreaterThan(0.015);
  });

  it('is decided by the least room where nothing is touched or passed', () => {
    const judged = judge('pitch', { laneM: 6, openingM: 12, gapM: 1.2, lockShare: 1 });
    expect(judged.decides.kind).toBe('spare');
    expect(judged.level).toBe('care');
  });
});

describe('full lock as an estimate', () => {
  const estimated = {
    ...coachBuilt,
    lock: { rearAxleRadiusM: 5, lowM: 4.5, highM: 5.6, from: 'estimate' as const },
  };
  const byLock = (gapM: number) =>
    judgeByLock((of) => buildScene('leave', of, { ...DEFAULTS.leave, gapM }), estimated, MARGIN_M).judged;

  it('is judged by the end of its range that asks for more room', () => {
    expect(judge('leave', { gapM: 0.47 }, estimated).level).toBe('tight');
    const judged = byLock(0.47);
    expect(judged.level).toBe('barred');
    expect(judged.ends?.map(({ contact }) => contact !== undefined)).toEqual([true, false]);
    expect(sayOutcome(judged, 'tail', 'metric').join(' ')).toMatch(
      /It may touch the wall: .*At the tightest lock there may be: \d cm over; at the widest: \d cm spare/,
    );
  });

  it('is called one beside its figure, and a lock that the card gives is not', () => {
    expect(sayDecides(byLock(1), 'tail', 'metric').says).toBe('spare, an estimate');
    expect(sayDecides(judge('leave', { gapM: 1 }), 'tail', 'metric').says).toBe('spare');
  });
});

describe('the headline of a lesson about a gap', () => {
  it('is never more than the least distance that its drawing has', () => {
    for (const gapM of [0.8, 1, 1.5])
      for (const straightM of [0, 2, 4]) {
        const { decides, least } = judge('reverse', { gapM, straightM, lockShare: 0.7 });
        if (!least) continue;
        const headM =
          decides.kind === 'gap' ? decides.spareM : decides.kind === 'spare' ? decides.least.gapM : 0;
        expect(headM).toBeLessThanOrEqual(least.gapM + 0.005);
      }
  });
});

describe('the most swing', () => {
  it('is told whatever decides, and a rack adds to it', () => {
    const without = judge('leave', { gapM: 1 }).mostSwingM;
    expect(without).toBeCloseTo(0.459, 3);
    expect(judge('leave', { gapM: 1 }, withRack).mostSwingM).toBeCloseTo(0.747, 3);
  });
});
