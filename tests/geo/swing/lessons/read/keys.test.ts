import { describe, expect, it } from 'vitest';
import { buildScene } from '../../../../../geo/swing/lessons/build/build-scene.ts';
import {
  drivenByHand,
  roll,
  steeredScene,
  takeWheel,
} from '../../../../../geo/swing/lessons/hand/hand-drive.ts';
import { keysOf } from '../../../../../geo/swing/lessons/read/keys.ts';
import { sweptStrips, tracesOf } from '../../../../../geo/swing/lessons/read/traces.ts';
import type { LessonId } from '../../../../../geo/swing/lessons/scene/lesson.ts';
import { DEFAULTS } from '../../../../../geo/swing/lessons/scene/settings.ts';
import { sayKey } from '../../../../../geo/swing/lessons/tell/say-key.ts';
import { coachBuilt } from '../vehicles.ts';

const scene = (lesson: LessonId) => buildScene(lesson, coachBuilt, DEFAULTS[lesson]);
const byHand = (metres: number) => {
  const from = scene('leave');
  const drive = takeWheel(from);
  roll(drive, from, metres);
  return steeredScene(from, drivenByHand(drive));
};

describe('the numbered figures of a drawing', () => {
  it('come in the order in which they are met: the gap, the tail out, the wheel in, the wall touched', () => {
    const keys = keysOf(scene('leave'));
    expect(keys.map(({ key, what }) => [key, what])).toEqual([
      [1, 'start gap'],
      [2, 'swing'],
      [3, 'cut-in'],
      [4, 'touch'],
    ]);
    expect(keys.map((key) => sayKey(key, 'metric'))).toEqual([
      { what: 'gap at the start', figure: '30 cm' },
      { what: 'tail farthest out on the whole way', figure: '46 cm' },
      { what: 'inner rear wheel inside the front one’s track', figure: '163 cm' },
      { what: 'touches the wall, from the start', figure: '0.8 m' },
    ]);
  });

  it('stand in the middle of the gap, at the corner farthest out and where the wall is touched', () => {
    const [gap, swing, , touch] = keysOf(scene('leave'));
    // the body stands along the x axis, its left side 0 m and the wall 0.3 m from it
    expect([gap?.at.xM, gap?.at.yM]).toEqual([coachBuilt.wheelbaseM / 2, expect.closeTo(0.15)]);
    // by Pythagoras: √((R + w/2)² + overhang²) − (R + w/2), R 4.985, w 2.32, overhang 2.42
    expect(swing).toMatchObject({
      end: 'tail',
      m: expect.closeTo(0.459, 3),
      at: { yM: expect.closeTo(0.459, 3) },
    });
    expect(touch?.at.yM).toBeCloseTo(0.3);
  });

  it('are the nose’s in reverse: 1.77 m by the same triangle with the length ahead of the rear axle', () => {
    const swing = keysOf(scene('reverse')).find(({ what }) => what === 'swing');
    expect(swing).toMatchObject({ end: 'nose', m: expect.closeTo(1.768, 3) });
    expect(swing && sayKey(swing, 'metric').what).toBe('nose farthest out on the whole way');
  });

  it('name what is nearest where nothing is touched, in the units chosen', () => {
    const nearest = keysOf(scene('mini-roundabout')).at(-1);
    expect(nearest).toMatchObject({ what: 'nearest', fixture: 'dome' });
    expect(nearest && sayKey(nearest, 'imperial')).toEqual({ what: 'nearest to the dome', figure: '8 in' });
  });

  it('say what a turn of a drive starts beside', () => {
    expect(
      sayKey({ what: 'start gap', beside: 'wall', key: 1, at: { xM: 0, yM: 0 }, m: 0.4 }, 'metric'),
    ).toEqual({
      what: 'starts this far from the wall',
      figure: '40 cm',
    });
  });

  it('leave out what does not move: gently, straight on for a metre, no tail goes out and no wheel cuts in', () => {
    const straight = { ...byHand(1), steered: undefined };
    const { steered: _, ...own } = straight;
    expect(keysOf(own).map(({ what }) => what)).toEqual(['start gap', 'nearest']);
  });

  it('are none by hand, where the motion is not the lesson’s own', () => {
    expect(keysOf(byHand(1))).toEqual([]);
  });
});

describe('the traces of a turn', () => {
  it('begin at the tail’s corner, the inner rear wheel and the nose', () => {
    const { tail, wheel, nose } = tracesOf(scene('leave'));
    // pulling away to the right: the tail goes out on the left, the inner wheel is the right one; the rear axle at 0
    expect(tail[0]).toEqual({ xM: -2.42, yM: expect.closeTo(0) });
    expect(wheel[0]).toEqual({ xM: 0, yM: expect.closeTo(-1.16 - 0.905) });
    expect(nose[0]).toEqual({ xM: expect.closeTo(4.985), yM: expect.closeTo(0) });
  });

  it('cover ground beyond the side each time the wheel goes over, and none while it stays straight', () => {
    expect(sweptStrips(scene('leave'))).toHaveLength(1);
    expect(sweptStrips(scene('mini-roundabout'))).toHaveLength(4);
    expect(sweptStrips(byHand(1))).toEqual([]);
  });

  it('lie out by as much as the swing: the foot of each place is on the line of the side', () => {
    const [strip] = sweptStrips(scene('leave'));
    const outM = strip?.places.map(({ at }) =>
      Math.hypot(at.xM - strip.foot(at).xM, at.yM - strip.foot(at).yM),
    );
    expect(Math.max(...(outM ?? []))).toBeCloseTo(0.459, 3);
  });
});
