import { describe, expect, it } from 'vitest';
import type { Turn } from '../../../../../geo/report/turn.ts';
import { buildScene } from '../../../../../geo/swing/lessons/build/build-scene.ts';
import { type Judged, judgeScene } from '../../../../../geo/swing/lessons/read/judge.ts';
import type { VehiclePart } from '../../../../../geo/swing/lessons/read/part.ts';
import type { Scene } from '../../../../../geo/swing/lessons/scene/scene.ts';
import { DEFAULTS, type LessonSettings } from '../../../../../geo/swing/lessons/scene/settings.ts';
import { announceByHand, announceLesson } from '../../../../../geo/swing/lessons/tell/announce.ts';
import { titleOf } from '../../../../../geo/swing/lessons/tell/names.ts';
import { sayAdvice } from '../../../../../geo/swing/lessons/tell/say-advice.ts';
import { sayByHand, sayNearest } from '../../../../../geo/swing/lessons/tell/say-contact.ts';
import { gapSumIn, sayDecides } from '../../../../../geo/swing/lessons/tell/say-decides.ts';
import { sayPart } from '../../../../../geo/swing/lessons/tell/say-part.ts';
import { sayRack } from '../../../../../geo/swing/lessons/tell/say-rack.ts';
import { sayModel } from '../../../../../geo/swing/say-model.ts';
import type { FullLock } from '../../../../../geo/vehicle/lock/full-lock.ts';
import { coachBuilt } from '../vehicles.ts';

const leave = (change: Partial<LessonSettings> = {}) =>
  buildScene('leave', coachBuilt, { ...DEFAULTS.leave, ...change });

describe('the heading of a lesson', () => {
  it('says what is driven, and beside what', () => {
    const titles = (['side-road', 'mini-roundabout', 'pitch', 'reverse', 'drive-turn'] as const).map(
      (lesson) => titleOf(buildScene(lesson, coachBuilt, DEFAULTS[lesson])),
    );
    expect(titles).toEqual([
      'Turning into a side road',
      'Across a mini-roundabout',
      'Into a pitch off a narrow lane',
      'Backing out beside a parked car',
      'Turning into a side road',
    ]);
    expect(titleOf(leave({ beside: 'parked car' }))).toBe('Pulling away from a parked car');
    const { settings: _, ...bare } = leave();
    expect(titleOf(bare)).toBe('Pulling away');
  });

  it('names a turn of a drive by its kind, its angle and its side', () => {
    const turn = { kind: 'u-turn', turnDeg: 180, side: 'right' } as Turn;
    expect(titleOf({ ...leave(), turn })).toBe('Turning back, 180° to the right');
  });
});

describe('a lesson for the ear', () => {
  it('says by how much the gap does or does not do, and what is touched', () => {
    expect(announceLesson(judgeScene(leave(), 0.1), 'tail', 'metric')).toBe(
      '16 cm over. 0.8 m from the start the left rear corner touches the wall.',
    );
    expect(announceLesson(judgeScene(leave({ gapM: 0.7 }), 0.1), 'tail', 'metric')).toMatch(
      /^24 cm spare\. Nothing is touched\.$/,
    );
  });

  it('says what is touched alone where the lesson is about no gap', () => {
    const pitch = buildScene('pitch', coachBuilt, DEFAULTS.pitch);
    expect(announceLesson(judgeScene(pitch, 0.1), 'tail', 'metric')).toMatch(
      /^11\.2 m from the start .* touches the hedge opposite\.$/,
    );
  });

  it('rounds against the driver: 30 cm less 45.9 are 16 over', () => {
    expect(gapSumIn('metric', { gapM: 0.3, swingM: 0.459 }).short).toBe('16 cm');
  });

  it('by hand says whose wheel it is, and what stops it', () => {
    const [wall] = leave().fixtures;
    const reading = {
      swingM: 0,
      swingMostM: 0,
      swingSide: 'left',
      cutInM: 0,
      steerRad: 0,
      headingChangeRad: 0,
    } as const;
    expect(announceByHand(undefined)).toBe('The wheel is in your hand.');
    expect(announceByHand({ ...reading, nearestM: 0.2 })).toBe('The wheel is in your hand.');
    expect(wall && announceByHand({ ...reading, nearestM: 0, nearest: wall })).toBe(
      'Stopped: it touches the wall.',
    );
    expect(wall && sayByHand({ ...reading, nearestM: -0.01, nearest: wall })).toBe(
      'It touches the wall. Roll the other way to come off it.',
    );
    expect(sayByHand({ ...reading, nearestM: 1 })).toBe('Nothing is touched.');
    expect(sayNearest({ ...reading, nearestM: 1 })).toBe('what stands there');
  });
});

describe('what to do about a run', () => {
  const say = (scene: Scene, advice: Parameters<typeof sayAdvice>[1]) =>
    sayAdvice(scene, advice, 'metric').join(' ');

  it('is said in a sentence for each thing that can be done', () => {
    const scene = leave();
    expect(say(scene, undefined)).toBe('');
    expect(say(scene, { kind: 'over the dome' })).toContain('the dome may be run over');
    expect(say(scene, { kind: 'turn earlier', orHarder: false })).toBe(
      'Turn earlier, or stop short and take a second go.',
    );
    expect(say(scene, { kind: 'turn earlier', orHarder: true })).toBe(
      'Turn earlier or harder, or stop short and take a second go.',
    );
    expect(say(scene, { kind: 'more room' })).toBe('Keep more room beside.');
    expect(say(scene, { kind: 'room for the tail', side: 'left' })).toContain('more room on the left');
  });

  it('goes straight on first, farther where some way straight was set, and less lock than a twentieth is none', () => {
    const small = {
      kind: 'gap too small',
      beside: 'wall',
      gapM: 0.3,
      neededM: 0.46,
      sureM: 0.05,
      lockShare: 0.65,
      straightM: 1.31,
    } as const;
    expect(say(leave(), small)).toBe(
      'It needs 46 cm, with 5 cm more to be sure, and has 30 cm to the wall: go 1.4 m straight on first, or turn no more than 65 % of full lock.',
    );
    expect(say(leave({ straightM: 1 }), { ...small, lockShare: 0.04 })).toBe(
      'It needs 46 cm, with 5 cm more to be sure, and has 30 cm to the wall: go 1.4 m straight on farther first, or leave a wider gap.',
    );
  });
});

describe('the figure that decides', () => {
  const contact = { fixture: { role: 'wall' } };
  const by = (decides: object, ends?: object) =>
    sayDecides({ decides, ends } as unknown as Judged, 'tail', 'metric');

  it('is a gap, a touch, what is passed over, the least room, or the swing itself', () => {
    expect(by({ kind: 'gap', gapM: 0.3, swingM: 0.46, spareM: -0.16 })).toEqual({
      number: '16 cm',
      says: 'over',
    });
    expect(by({ kind: 'gap', gapM: 0.6, swingM: 0.46, spareM: 0.14 })).toEqual({
      number: '14 cm',
      says: 'spare',
    });
    expect(by({ kind: 'touch', contact })).toEqual({ number: 'touches', says: 'the wall' });
    const over = { fixture: { role: 'kerb' }, overM: 0.28 };
    expect(by({ kind: 'over', over })).toEqual({ number: '28 cm', says: 'over the kerb' });
    const least = { fixture: { role: 'hedge' }, gapM: 0.12 };
    expect(by({ kind: 'spare', least })).toEqual({ number: '12 cm', says: 'spare to the hedge' });
    expect(by({ kind: 'swing', swingM: 0.46 })).toEqual({ number: '46 cm', says: 'tail swing' });
  });

  it('is called an estimate where full lock is one', () => {
    expect(by({ kind: 'swing', swingM: 0.46 }, [])).toEqual({
      number: '46 cm',
      says: 'tail swing, an estimate',
    });
  });
});

describe('part of the vehicle', () => {
  it('is told without an article', () => {
    const parts = [
      { kind: 'corner', side: 'right', end: 'rear' },
      { kind: 'wheel', side: 'left', end: 'front' },
      { kind: 'side', side: 'left' },
      { kind: 'end', end: 'front' },
      { kind: 'end', end: 'rear' },
      { kind: 'rack' },
      { kind: 'rack corner', side: 'left' },
    ] as VehiclePart[];
    expect(parts.map(sayPart)).toEqual([
      'right rear corner',
      'left front wheel',
      'left side',
      'front',
      'tail',
      'rack',
      'left corner of the rack',
    ]);
  });
});

describe('what the figures of a lesson rest on', () => {
  it('is the lock, measured or worked out, and estimated where the card tells no circle', () => {
    const lock = (from: string) => sayModel({ from, lowM: 4.63, highM: 5.51 } as FullLock, 'metric');
    expect(lock('measured')).toMatch(/^Worked out from full lock as measured in the yard: tyres/);
    expect(lock('kerb circle')).toMatch(/^Worked out, not measured: tyres/);
    expect(lock('estimate')).toMatch(
      /^Full lock is an estimate: .* from 4\.6 to 5\.6 m\. .* Worked out, not/,
    );
  });

  it('is the rack too: its own, one tried out, or none', () => {
    const rack = { lengthM: 0.7, widthM: 2 };
    expect(
      [undefined, rack, { ...rack, tryOut: true }].map((one) => sayRack({ rack: one } as never, 'metric')),
    ).toEqual(['without a rack', 'with its rack of 0.70 m', 'with a rack of 0.70 m tried out']);
  });
});
