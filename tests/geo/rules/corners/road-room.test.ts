import { describe, expect, it } from 'vitest';
import { COUNTRY_TABLE } from '../../../../geo/country/table.ts';
import type { DrivenTurn } from '../../../../geo/drive/turns/driven-turn.ts';
import type { Tags } from '../../../../geo/roads/roads.ts';
import { ringShape, turnBackShape } from '../../../../geo/rules/corners/circle-shape.ts';
import { hairpinShape } from '../../../../geo/rules/corners/hairpin-shape.ts';
import { type MeasuredTurn, measureTurn, tailOverM } from '../../../../geo/rules/corners/measure-turn.ts';
import { roadRoom, type Turning } from '../../../../geo/rules/corners/road-room.ts';
import { adviseTurn, sayTurn } from '../../../../geo/rules/corners/say-turn.ts';
import type { CornerSite } from '../../../../geo/rules/corners/site.ts';
import { swingVehicle } from '../../../support/swing-vehicle.ts';

const { widths } = COUNTRY_TABLE.GB;
const LEFT: Turning = { forward: true, side: 'left', driveSide: 'left', widths: widths.value, urban: false };
const room = (tags: Tags, turning: Partial<Turning> = {}) => roadRoom(tags, { ...LEFT, ...turning });

describe('the room on a road', () => {
  it('of which nothing is mapped is what is usual of its kind', () => {
    // RASt 4.25 m of one lane; slip roads and through roads from memory
    expect(room({ highway: 'residential', oneway: 'yes' })).toMatchObject({ roadM: 4.25, from: 'default' });
    expect(room({ highway: 'primary', oneway: 'yes' }).roadM).toBe(5.5);
    expect(room({ highway: 'trunk_link', oneway: 'yes' }).roadM).toBe(4.5);
    expect(room({ highway: 'service', lanes: '1' }).roadM).toBeLessThanOrEqual(3.5);
    expect(room({ route: 'ferry' }).from).toBe('default');
  });

  it('is shared by its lanes, as they are mapped for each direction', () => {
    const own = { highway: 'primary', width: '10', 'lanes:forward': '2', 'lanes:backward': '1' };
    expect(room(own).laneM).toBeCloseTo(10 / 3);
    expect(room(own, { side: 'right' }).toLaneEdgeM).toBeCloseTo(10 - 2 * (10 / 3) + 10 / 3);
    // three lanes, one of them the other way's: two are ours
    expect(
      room({ highway: 'primary', width: '10.5', lanes: '3', 'lanes:backward': '1' }, { side: 'right' }),
    ).toMatchObject({
      laneM: 3.5,
      toLaneEdgeM: expect.closeTo(10.5 - 2 * 3.5 + 3.5),
    });
    expect(room({ highway: 'primary', lanes: '4' }).roadM).toBeCloseTo(4 * widths.value.laneM.primary);
    expect(room({ highway: 'primary', oneway: 'yes', lanes: '2' }).roadM).toBeCloseTo(
      2 * widths.value.laneM.primary,
    );
  });

  it('is each lane’s own where their widths are mapped and can all be read', () => {
    const lanes = { highway: 'primary', oneway: 'yes', lanes: '2', 'width:lanes': '3|4' };
    expect(room(lanes)).toMatchObject({ laneM: 3, roadM: 7, from: 'tags' });
    expect(room(lanes, { side: 'right' }).laneM).toBe(4);
    expect(room({ ...lanes, 'width:lanes': '3|wide' })).toMatchObject({ from: 'default' });
    expect(room({ ...lanes, 'width:lanes': '3|' })).toMatchObject({ from: 'default' });
  });
});

const ROAD = { laneM: 2.75, toLaneEdgeM: 2.75, roadM: 5.5, from: 'tags', measured: true } as const;
const driven = (part: Partial<DrivenTurn>): DrivenTurn =>
  ({ kind: 'bend', side: 'left', turnDeg: 170, fromM: 0, toM: 30, atM: 15, node: 1, ...part }) as DrivenTurn;
const site = (part: Partial<CornerSite> = {}): CornerSite => ({
  vehicle: swingVehicle(),
  driven: driven({ drawnRadiusM: 12 }),
  side: 'left',
  driveSide: 'left',
  entry: ROAD,
  exit: ROAD,
  before: { highway: 'secondary' },
  after: { highway: 'secondary' },
  kerbRadiusM: 6,
  nodeTags: {},
  ...part,
});

describe('a hairpin', () => {
  it('goes by its drawing where that is good enough, else by a usual one, and says so', () => {
    expect(hairpinShape(site())).toMatchObject({ bendRadiusM: 12, mapped: true, assumed: [] });
    const undrawn = hairpinShape(site({ driven: driven({ unmeasured: true }) }));
    expect(undrawn).toMatchObject({ bendRadiusM: 8, mapped: false });
    expect(undrawn.assumed).toContainEqual({ what: 'bend radius', m: 8 });
  });

  it('of the narrower of its two roads is as wide as that', () => {
    const narrow = { ...ROAD, laneM: 3, toLaneEdgeM: 3, roadM: 3 };
    const [one, other] = [hairpinShape(site({ entry: narrow })), hairpinShape(site({ exit: narrow }))];
    expect(one.fit).toEqual(other.fit);
    expect(one.fit.rearAxleRadiusM).not.toBe(hairpinShape(site()).fit.rearAxleRadiusM);
  });

  it('is driven in its own lane on the inside or the outside, by the side that is driven on', () => {
    const wide = { ...ROAD, laneM: 3.5, toLaneEdgeM: 3.5, roadM: 7 };
    const bend = { entry: wide, exit: wide, driven: driven({ drawnRadiusM: 25 }) };
    const inside = hairpinShape(site(bend));
    const outside = hairpinShape(site({ ...bend, side: 'right' }));
    // 25 m to the middle line: its own lane runs about 23 m on the inside and 27 on the outside
    expect([inside.fit.room, outside.fit.room]).toEqual(['own lane', 'own lane']);
    expect(outside.fit.rearAxleRadiusM).toBeGreaterThan(inside.fit.rearAxleRadiusM + 2);
  });
});

describe('a circle', () => {
  it('drawn as a ring is twice its radius and the width of its roadway', () => {
    const ring = driven({ kind: 'roundabout', part: 'ring', drawnRadiusM: 10 });
    expect(ringShape(site({ driven: ring }))).toMatchObject({ circleM: 25.5, assumed: [], mapped: true });
    const usual = { ...ROAD, from: 'default', measured: false } as const;
    expect(ringShape(site({ driven: ring, entry: usual })).assumed).toEqual([{ what: 'ring width', m: 5.5 }]);
  });

  it('to turn back in is a turning place, a mini-roundabout or the road between its kerbs', () => {
    const back = driven({ kind: 'u-turn', turnDeg: 180 });
    const at = (nodeTags: Tags) => turnBackShape(site({ driven: back, nodeTags }));
    // CD 116: a mini-roundabout is 28 m at the most; 18 is usual, 15 a turning place by judgement
    expect(at({ highway: 'mini_roundabout' }).circleM).toBe(18);
    expect(at({ highway: 'turning_circle' }).circleM).toBe(15);
    expect(at({ highway: 'turning_loop', diameter: '22' })).toMatchObject({
      circleM: 22,
      assumed: [],
      mapped: true,
    });
    expect(at({ highway: 'turning_circle', diameter: 'big' }).assumed).toEqual([
      { what: 'turning place', m: 15, insteadOf: 'diameter=big' },
    ]);
    expect(at({})).toMatchObject({ circleM: 5.5, mapped: true });
    // the two carriageways 8 m apart, half of each beyond that
    expect(turnBackShape(site({ driven: { ...back, apartM: 8 } })).circleM).toBe(13.5);
  });
});

describe('a turn in words', () => {
  const told = (part: Partial<DrivenTurn>, more: Partial<CornerSite> = {}): MeasuredTurn =>
    measureTurn(site({ driven: driven(part), side: part.side ?? 'left', ...more }));

  it('is named by what it is', () => {
    expect(sayTurn(told({ drawnRadiusM: 12 }), 'metric')).toMatch(/^Hairpin to the left/);
    expect(sayTurn(told({ turnDeg: 80 }), 'metric')).toMatch(/^Left corner of 80°/);
    expect(sayTurn(told({ kind: 'roundabout', part: 'ring', drawnRadiusM: 10 }), 'metric')).toMatch(
      /^Round the roundabout of 26 m/,
    );
    expect(sayTurn(told({ kind: 'roundabout', part: 'entry', turnDeg: 60 }), 'metric')).toMatch(
      /^Left onto the roundabout/,
    );
    expect(sayTurn(told({ kind: 'roundabout', part: 'exit', turnDeg: 60, side: 'right' }), 'metric')).toMatch(
      /^Right off the roundabout/,
    );
    expect(sayTurn(told({ kind: 'mini-roundabout', side: 'right', turnDeg: 100 }), 'metric')).toMatch(
      /^Right at the mini-roundabout/,
    );
    expect(sayTurn(told({ kind: 'u-turn', side: 'right', turnDeg: 180 }), 'metric')).toMatch(
      /^Turning back within 5\.5 m/,
    );
  });

  it('round a ring has no line beside the tail, and is watched for', () => {
    const ring = told({ kind: 'roundabout', part: 'ring', side: 'right', drawnRadiusM: 14 });
    expect(tailOverM(ring)).toBe(0);
    expect(adviseTurn(ring)).toContain('the nose goes round far outside the rear wheels');
  });

  it('on which the tail goes out to the oncoming lane, the lane beside or the kerb says which', () => {
    const wide = { ...ROAD, laneM: 3.5, toLaneEdgeM: 3.5, roadM: 7 };
    const across = (before: Tags, side: 'left' | 'right') =>
      told({ kind: 'junction', turnDeg: 90, side }, { entry: wide, exit: wide, before, kerbRadiusM: 10 });
    expect(across({ highway: 'primary' }, 'left').beside).toBe('oncoming traffic');
    expect(across({ highway: 'primary', oneway: 'yes' }, 'left').beside).toBe('lane beside');
    expect(across({ highway: 'primary' }, 'right').beside).toBe('kerb');
    expect(adviseTurn(across({ highway: 'primary', oneway: 'yes' }, 'left'))).toContain(
      'what stands beside you',
    );
  });
});
