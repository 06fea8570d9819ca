import { describe, expect, it } from 'vitest';
import { roadSetting } from '../../../../geo/drive/times/road-setting.ts';
import { circleThrough } from '../../../../geo/drive/turns/circle-through.ts';
import { isRing, ringRadiusM } from '../../../../geo/drive/turns/ring.ts';
import { type TestWay, testMap } from '../../../support/drive-on.ts';

const RING = { highway: 'primary', junction: 'roundabout' };
/** Places on a circle about the origin, in hundreds of metres. */
const on = (radiusM: number, fromDeg: number, toDeg: number, count: number) =>
  Array.from({ length: count }, (_, i) => {
    const turn = ((fromDeg + ((toDeg - fromDeg) * i) / (count - 1)) * Math.PI) / 180;
    return `${((radiusM / 100) * Math.cos(turn)).toFixed(6)},${((radiusM / 100) * Math.sin(turn)).toFixed(6)}`;
  });
const radius = (...ways: TestWay[]) => ringRadiusM(testMap(ways).roads, 0);

describe('the circle through places', () => {
  it('is found exactly, wherever it lies', () => {
    const found = circleThrough([15, 10, 5, 10], [0, 5, 0, -5]);
    expect(found).toEqual({ x: expect.closeTo(10), y: expect.closeTo(0), radiusM: expect.closeTo(5) });
  });

  it('is none through two places, on a straight line or all in one place', () => {
    expect(circleThrough([0, 1], [0, 1])).toBeUndefined();
    expect(circleThrough([0, 1, 2, 3], [0, 1, 2, 3])).toBeUndefined();
    expect(circleThrough([4, 4, 4], [4, 4, 4])).toBeUndefined();
  });
});

describe('the radius of a ring', () => {
  it('is that of all its ways together', () => {
    const [half, other] = [on(20, 0, 180, 9), on(20, 180, 360, 9)];
    const whole = [...half.slice(0, -1), ...other];
    const closed = [...whole.slice(0, -1), whole[0] ?? ''];
    expect(radius({ id: 1, nodes: closed, tags: RING })).toBeCloseTo(20, 1);
    const joined = [...other.slice(0, -1), half[0] ?? ''];
    expect(
      radius(
        { id: 1, nodes: half, tags: RING },
        { id: 2, nodes: [half.at(-1) ?? '', ...joined.slice(1)], tags: RING },
      ),
    ).toBeCloseTo(20, 1);
  });

  it('is none where it is drawn as a long strip, or of two places', () => {
    const strip = ['0,0', '1,0', '2,0', '2,0.05', '1,0.05', '0,0.05', '0,0'];
    expect(radius({ id: 1, nodes: strip, tags: RING })).toBeUndefined();
    expect(radius({ id: 1, nodes: ['0,0', '1,0'], tags: RING })).toBeUndefined();
  });

  it('is of what is driven round in one direction alone', () => {
    expect([isRing(RING), isRing({ junction: 'circular' }), isRing({ junction: 'yes' })]).toEqual([
      true,
      true,
      false,
    ]);
  });
});

describe('what kind of road the origin of its limit makes it', () => {
  const classOf = (tags: Record<string, string>) => roadSetting({ highway: 'primary', ...tags }).speedClass;
  it('is one of two things, the tags tell the other', () => {
    expect(classOf({ 'maxspeed:type': 'DE:motorway' })).toBe('motorway');
    expect(classOf({ 'maxspeed:type': 'GB:nsl_dual' })).toBe('dual');
    expect(classOf({ 'maxspeed:type': 'GB:nsl_dual', motorroad: 'yes' })).toBe('dualExpressway');
    expect(classOf({ 'maxspeed:type': 'GB:nsl_single' })).toBe('rural');
    expect(classOf({ 'maxspeed:type': 'RO:trunk', dual_carriageway: 'yes' })).toBe('dualExpressway');
    expect(classOf({ 'maxspeed:type': 'RO:trunk' })).toBe('expressway');
  });
});
