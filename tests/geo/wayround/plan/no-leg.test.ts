import { describe, expect, it } from 'vitest';
import { checkDrive } from '../../../../geo/check.ts';
import { readGpx } from '../../../../geo/drive/gpx/read-gpx.ts';
import { writeGpx } from '../../../../geo/drive/gpx/write-gpx.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import type { Tags } from '../../../../geo/roads/roads.ts';
import type { PlanInput, PlanPlace } from '../../../../geo/wayround/plan/plan-input.ts';
import { planDrive } from '../../../../geo/wayround/plan.ts';
import { type MapSketch, roadsFrom } from '../../../support/build-roads.ts';
import { COACH_BUILT } from '../../../support/coach-built.ts';

const STREET: Tags = { highway: 'residential', surface: 'asphalt' };
const nodes: MapSketch['nodes'] = {
  west: [52, 10],
  ford: [52, 10.01],
  bank: [52, 10.012],
  east: [52, 10.02],
  far: [52, 10.03],
  camp: [51.998, 10.02],
  pitch: [51.997, 10.02],
  loop: [52.003, 10.01],
  back: [52.003, 10.02],
};

/** A street from west to east whose middle piece and whose lane to a campsite are as told. */
function street(middle: Tags, lane: Tags = { highway: 'service' }, also: MapSketch['ways'] = []): MapSketch {
  return {
    nodes,
    ways: [
      { id: 1, refs: ['west', 'ford'], tags: STREET },
      { id: 2, refs: ['ford', 'bank'], tags: { ...STREET, ...middle } },
      { id: 3, refs: ['bank', 'east'], tags: STREET },
      { id: 4, refs: ['east', 'far'], tags: STREET },
      { id: 5, refs: ['east', 'camp', 'pitch'], tags: lane },
      ...also,
    ],
  };
}

const WEST: PlanPlace = { lat: 52, lon: 10.002, stop: true };
const EAST: PlanPlace = { lat: 52, lon: 10.016, stop: true };
const FAR: PlanPlace = { lat: 52, lon: 10.028, stop: true };
const CAMP: PlanPlace = { lat: 51.9979, lon: 10.02, stop: true };

const ON_DAY = { card: COACH_BUILT, program: 'test', made: '2027-01-01T00:00:00Z' };

function plan(map: MapSketch, places: readonly PlanPlace[], more: Partial<PlanInput> = {}) {
  return planDrive({ ...ON_DAY, roads: roadsFrom(map), places, ...more });
}

function whyNot(...asked: Parameters<typeof plan>): string {
  const planned = plan(...asked);
  if (planned.ok) throw new Error('a plan was made');
  expect(planned.error.code).toBe('no way');
  return planned.error.message;
}

function made(...asked: Parameters<typeof plan>) {
  const planned = plan(...asked);
  if (!planned.ok) throw new Error(planned.error.message);
  return planned.value;
}

describe('a plan with a leg that no road serves', () => {
  it('names the leg that fails, the limit that would have to give, and by how much', () => {
    const low = street({ maxheight: '2.5', name: 'Mill Lane' });
    expect(whyNot(low, [FAR, EAST, WEST])).toMatch(
      /^From place 2 to place 3 there is no way: 1 limit would have to give at the least\. The height limit of 2\.5 on Mill Lane is short by \d+ cm\./,
    );
    expect(whyNot(low, [WEST, FAR, EAST])).toMatch(/^From place 1 to place 2 there is no way: 1 limit/);
  });

  it('names a low bridge that the road is carried under', () => {
    // learnt from the check of the first try: without it the leg is laid
    const height = street({ maxheight: '2.6', bridge: 'yes' });
    expect(whyNot(height, [WEST, EAST])).toContain('The height limit of 2.6');
  });

  it('names the rack, or what the load is over its plate, where the vehicle passes without', () => {
    const { rack: _, ...bare } = COACH_BUILT;
    const card: PlanInput['card'] = {
      ...bare,
      rack: { fitted: true, lengthM: 0.9, widthM: 1.8, what: 'two bicycles' } as never,
    };
    const short = String(Math.ceil(COACH_BUILT.lengthM * 10) / 10);
    expect(whyNot(street({ maxlength: short }), [WEST, EAST], { card })).toContain(
      'With the rack taken off there is a way',
    );
  });

  it('names the roads that are closed across, or the river between', () => {
    expect(whyNot(street({ motor_vehicle: 'no', name: 'Ford Lane' }), [WEST, EAST])).toMatch(
      /^From place 1 to place 2 there is no way: every road across is closed to this vehicle \(Ford Lane\)\. Move one/,
    );
    const { ways } = street({});
    const river = { id: 9, refs: ['loop', 'bank'], tags: { waterway: 'river', name: 'Ouse' } };
    const parted: MapSketch = {
      nodes: { ...nodes, loop: [52.003, 10.011], bank: [51.99, 10.011], shore: [52, 10.012] },
      ways: [
        ...ways.filter(({ id }) => id !== 2 && id !== 3),
        { id: 3, refs: ['shore', 'east'], tags: STREET },
        river,
      ],
    };
    expect(whyNot(parted, [WEST, EAST])).toContain(': Ouse (a river) lies between');
  });

  it('says that the map ends where main roads run off it on both sides, and what would have to give on it', () => {
    const main: Tags = { highway: 'primary' };
    const ways = street({ maxheight: '2.5', name: 'Mill Lane' }).ways.map((way) =>
      way.id === 1 || way.id === 4 ? { ...way, tags: main } : way,
    );
    expect(whyNot({ nodes, ways }, [WEST, EAST])).toMatch(
      /no way within the map that is loaded: .*Load the map of the country between.*On what is loaded there is none: 1 limit/,
    );
  });

  /** A campsite's two roads behind a height bar; the street goes on for so many pieces more. */
  function behindBar(more: number): MapSketch {
    const { ways } = street({}, { highway: 'service' });
    const on = Array.from({ length: more }, (_, i) => [`on ${i}`, [52, 10.03 + 0.001 * (i + 1)]] as const);
    return {
      nodes: { ...nodes, yard: [51.998, 10.021], ...Object.fromEntries(on) },
      ways: [
        ...ways.filter(({ id }) => id !== 5),
        { id: 5, refs: ['camp', 'pitch'], tags: { highway: 'service' } },
        { id: 6, refs: ['east', 'camp'], tags: { highway: 'service', maxheight: '2.5', name: 'Camp Lane' } },
        ...on.map(([name], i) => ({
          id: 20 + i,
          refs: [i === 0 ? 'far' : `on ${i - 1}`, name],
          tags: STREET,
        })),
      ],
    };
  }

  it('says which place is shut in', () => {
    expect(whyNot(behindBar(0), [CAMP, WEST])).toMatch(
      /The height limit of 2\.5 on Camp Lane is short by \d+ cm\. Move one of the two places, .* From place 1 it gets no farther than 110 m of road in all\.$/,
    );
  });

  it('begins outside a yard that no road leads out of, and tells that with the reason', () => {
    const { say, report } = made(behindBar(60), [CAMP, WEST]);
    expect(say.join(' ')).toMatch(
      /Place 1 is put on a road \d+ m from it: none of those nearer leads on for this vehicle\..* By the nearer roads there is no way: 1 limit .*Camp Lane is short by \d+ cm\.$/,
    );
    expect(report.cautions).toEqual(expect.arrayContaining([...say]));
    // farther off than one walks it would be another place
    const upCountry = { ...CAMP, lat: 51.997 };
    expect(whyNot(behindBar(60), [upCountry, WEST])).toMatch(/Camp Lane is short by/);
  });

  it('tells of a nearer road that is closed to the vehicle', () => {
    const onLane: PlanPlace = { lat: 51.9991, lon: 10.02, stop: true };
    const { say } = made(behindBar(0), [WEST, onLane]);
    expect(say).toEqual([
      expect.stringMatching(
        /^Place 2 is put on a road 1\d0 m from it: Camp Lane is closed to this vehicle\. .*2\.5/,
      ),
    ]);
  });
});

describe('a stop on a dead end', () => {
  it('is gone into and come out of on a site’s own road, and that turning round is told', () => {
    const { report, say } = made(street({}), [WEST, CAMP, FAR]);
    expect(report.roads.map(({ way }) => way)).toEqual([1, 2, 3, 5, 5, 4]);
    expect(report.verdict).not.toBe('barred');
    expect(say).toEqual([
      expect.stringMatching(/^At place 2 the vehicle has to turn round, .*nothing tells/),
    ]);
  });

  it('is not turned at in a street, nor where the place only leads the line', () => {
    expect(whyNot(street({}, STREET), [WEST, CAMP, FAR])).toMatch(
      /^From place 2 this vehicle comes to place 3 only by turning round at place 2, .*no room/,
    );
    expect(whyNot(street({}), [WEST, { ...CAMP, stop: false }, FAR])).toMatch(
      /^Place 2 only leads the line.*Make it a stop/,
    );
  });

  it('is not turned at where a road leads on', () => {
    const through = street({}, { highway: 'service' }, [{ id: 6, refs: ['pitch', 'far'], tags: STREET }]);
    const { report, say } = made(through, [WEST, CAMP, FAR]);
    expect(report.roads.map(({ way }) => way)).toEqual([1, 2, 3, 5, 6, 4]);
    expect(say).toEqual([]);
  });
});

describe('a stop on a road for those who go there', () => {
  it('opens that road to the vehicle, and the check knows of it', () => {
    const own = street({ motor_vehicle: 'destination' });
    const stop = { lat: 52, lon: 10.011, stop: true };
    const { report, stops } = made(own, [WEST, stop, EAST]);
    expect(report.verdict).not.toBe('barred');
    expect(stops).toMatchObject([{ lat: 52, lon: 10.011 }]);
    expect(whyNot(own, [WEST, { ...stop, stop: false }, EAST])).toMatch(/^Place 2 only leads the line/);
  });

  it('is told by the file of the drive, which opens the road to whoever reads it and says so', () => {
    const roads = roadsFrom(street({ motor_vehicle: 'destination' }));
    const planned = planDrive({
      ...ON_DAY,
      roads,
      places: [WEST, { lat: 52, lon: 10.011, stop: true }, EAST],
    });
    if (!planned.ok) throw new Error(planned.error.message);
    const text = writeGpx(planned.value.route, [], 'test');
    if (!text.ok) throw new Error(text.error.message);
    const checked = (gpx: string) => {
      const read = readGpx(gpx);
      const route = read.ok ? read.value.routes[0] : undefined;
      if (route === undefined) throw new Error('the drive cannot be read');
      const drive = followRoads(route, roads);
      return checkDrive({ ...ON_DAY, route, file: 'kept.gpx', drive, roads });
    };
    const kept = checked(text.value);
    expect(kept.verdict).not.toBe('barred');
    expect(kept.cautions).toContainEqual(
      expect.stringMatching(/^The drive’s file says that you stop at 1 place on the way: .*closed to you\.$/),
    );
    expect(planned.value.report.cautions.join()).not.toContain('file says');
    const bare = checked(text.value.replace(/<extensions>.*?<\/extensions>/g, ''));
    expect(bare.verdict).toBe('barred');
    expect(bare.cautions.join()).not.toContain('file says');
  });
});
