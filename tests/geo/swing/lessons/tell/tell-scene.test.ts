import { describe, expect, it } from 'vitest';
import { buildScene } from '../../../../../geo/swing/lessons/build/build-scene.ts';
import {
  drivenByHand,
  roll,
  steeredScene,
  takeWheel,
} from '../../../../../geo/swing/lessons/hand/hand-drive.ts';
import { DEFAULTS } from '../../../../../geo/swing/lessons/scene/settings.ts';
import { tellScene } from '../../../../../geo/swing/lessons/tell/tell-scene.ts';
import { coachBuilt, withRack } from '../vehicles.ts';

describe('a lesson told', () => {
  it('says how far the tail goes, when it touches the wall and what to do', () => {
    expect(tellScene(buildScene('leave', coachBuilt, DEFAULTS.leave), 'metric')).toEqual([
      'Coach-built 7.4 stands 30 cm from the wall and goes at full lock, a radius of 5.0 m at the rear axle.',
      'The left rear corner swings out as soon as the wheel turns: 46 cm beyond the line of its side, 1.9 m from the start and 21°.',
      'It touches the wall with its left rear corner 0.8 m from the start, turned by 9°.',
      'The inner rear wheel runs up to 163 cm inside the track of the front wheel.',
      'It needs 46 cm, with 5 cm more to be sure, and has 30 cm to the wall: turn no more than 54 % of full lock.',
    ]);
  });

  it('is told in feet and inches where those were chosen, and in both', () => {
    const scene = buildScene('leave', coachBuilt, DEFAULTS.leave);
    expect(tellScene(scene, 'imperial').join(' ')).not.toMatch(/\d c?m\b/);
    expect(tellScene(scene, 'imperial')[2]).toBe(
      'It touches the wall with its left rear corner 2.5 ft from the start, turned by 9°.',
    );
    expect(tellScene(scene, 'both')[2]).toBe(
      'It touches the wall with its left rear corner 0.8 m (2.5 ft) from the start, turned by 9°.',
    );
  });

  it('says that the tail hangs over a kerb without a touch, and that people stand there', () => {
    const told = tellScene(
      buildScene('leave', coachBuilt, { ...DEFAULTS.leave, beside: 'kerb', gapM: 0.1 }),
      'metric',
    );
    expect(told).toContain(
      'The left rear corner hangs over the kerb by 36 cm. People stand there; posts usually stand 45 cm back.',
    );
    expect(told.join(' ')).toContain(
      'It touches nothing; it comes nearest to the post behind the kerb: 9 cm',
    );
  });

  it('names the rack where it is the rack', () => {
    const told = tellScene(buildScene('leave', withRack, { ...DEFAULTS.leave, gapM: 0.7 }), 'metric').join(
      ' ',
    );
    expect(told).toContain('Coach-built 7.4 (with its rack of 0.70 m) stands 70 cm from the wall');
    expect(told).toContain('The left corner of the rack swings out');
    expect(told).toContain('It touches the wall with the left corner of the rack');
  });

  it('says how far to go straight back beside a parked car', () => {
    const told = tellScene(buildScene('reverse', coachBuilt, DEFAULTS.reverse), 'metric').join(' ');
    expect(told).toMatch(/go \d\.\d m straight back first, or turn no more than \d+ % of full lock/);
  });

  it('says no lesson of a drive by hand, only what happened', () => {
    const scene = buildScene('leave', coachBuilt, DEFAULTS.leave);
    const drive = takeWheel(scene);
    roll(drive, scene, 2);
    const told = tellScene(steeredScene(scene, drivenByHand(drive)), 'metric');
    expect(told[0]).toBe('Coach-built 7.4 is steered by hand.');
    expect(told[1]).toBe('The tail does not swing out: the wheel stays straight.');
    expect(told.join(' ')).toContain('It touches nothing');
  });
});
