import { describe, expect, it } from 'vitest';
import { followRoads } from '../../../geo/drive/match/follow-roads.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import type { PlanInput, PlanPlace } from '../../../geo/wayround/plan/plan-input.ts';
import { planDrive } from '../../../geo/wayround/plan.ts';
import { type MapSketch, roadsFrom } from '../../support/build-roads.ts';
import { COACH_BUILT } from '../../support/coach-built.ts';

const STEP = 0.003;
const NAMES = Array.from({ length: 25 }, (_, i) => [i % 5, Math.floor(i / 5)] as const);

/** A town of five by five crossings; street x-y runs east from crossing (x, y), avenue x|y north. */
function town(tags: Readonly<Record<string, Tags>> = {}): MapSketch {
  const nodes = Object.fromEntries(
    NAMES.map(([x, y]) => [`${x},${y}`, [52 + STEP * y, 10 + STEP * x] as const]),
  );
  const ways = NAMES.flatMap(([x, y]) => [
    ...(x < 4 ? [{ id: 100 + 10 * x + y, refs: [`${x},${y}`, `${x + 1},${y}`], name: `${x}-${y}` }] : []),
    ...(y < 4 ? [{ id: 200 + 10 * x + y, refs: [`${x},${y}`, `${x},${y + 1}`], name: `${x}|${y}` }] : []),
  ]).map(({ id, refs, name }) => ({
    id,
    refs,
    tags: { highway: 'residential', surface: 'asphalt', ...tags[name] },
  }));
  return { nodes, ways };
}

const at = (x: number, y: number): PlanPlace => ({ lat: 52 + STEP * y, lon: 10 + STEP * x });

function plan(
  places: readonly PlanPlace[],
  tags: Readonly<Record<string, Tags>> = {},
  more: Partial<PlanInput> = {},
) {
  return planDrive({
    roads: roadsFrom(town(tags)),
    card: COACH_BUILT,
    places,
    program: 'test',
    made: '2027-01-01T00:00:00Z',
    ...more,
  });
}

function waysOf(planned: ReturnType<typeof plan>): number[] {
  if (!planned.ok) throw new Error(planned.error.message);
  return planned.value.report.roads.map(({ way }) => way);
}

describe('a plan of a firm that knows the roads', () => {
  it('keeps off the one that it measured as too low, and takes it once that has ended', () => {
    const low = {
      id: 'n1',
      at: { lat: 52, lon: 10 + 1.5 * STEP },
      osm: { type: 'way' as const, id: 110 },
      say: 'Low wires',
      heightM: 2.4,
    };
    const notes = (until: string) => ({ localNotes: [{ ...low, until }] });
    const straight = waysOf(plan([at(0, 0), at(3, 0)]));
    expect(straight).toContain(110);
    expect(waysOf(plan([at(0, 0), at(3, 0)], {}, notes('2027-01-01')))).not.toContain(110);
    expect(waysOf(plan([at(0, 0), at(3, 0)], {}, notes('2026-12-31')))).toEqual(straight);
  });

  it('reaches a place on that road from the side before it', () => {
    const low = { id: 'n1', at: at(2, 0), osm: { type: 'way' as const, id: 110 }, say: 'Gate', heightM: 2.4 };
    const before = { lat: 52, lon: 10 + 1.3 * STEP };
    expect(waysOf(plan([at(0, 0), before], {}, { localNotes: [low] }))).toContain(110);
  });
});

describe('a drive planned from nothing', () => {
  it('leads along the shortest roads, part of an edge at both ends', () => {
    const planned = plan([at(0.4, 0), at(2.5, 0)]);
    expect(waysOf(planned)).toEqual([100, 110, 120]);
    expect(planned.ok && planned.value.drive.lengthM).toBeCloseTo(2.1 * 205.4, -1);
  });

  it('goes round what bars the vehicle, and is never barred', () => {
    const planned = plan([at(0.4, 0), at(3.5, 0)], { '1-0': { maxheight: '2.5' } });
    expect(waysOf(planned)).not.toContain(110);
    expect(planned.ok && planned.value.report.verdict).not.toBe('barred');
  });

  it('follows the same roads when its track is matched again', () => {
    const planned = plan([at(0.4, 0), at(2, 3.5), at(4, 1.5)]);
    if (!planned.ok) throw new Error(planned.error.message);
    const again = followRoads(planned.value.route, roadsFrom(town()));
    const ways = (drive: typeof again) => drive.legs.map((leg) => leg.kind === 'stretch' && leg.way);
    expect(ways(again)).toEqual(ways(planned.value.drive));
  });

  it('does not turn round at a place between', () => {
    const planned = plan([at(0.4, 0), at(2, 1.5), at(0.4, 4)]);
    const roads = planned.ok ? planned.value.report.roads : [];
    const back = roads.some(
      ({ way, forward }, i) => roads[i + 1]?.way === way && roads[i + 1]?.forward !== forward,
    );
    expect(roads.length).toBeGreaterThan(3);
    expect(back).toBe(false);
  });

  it('puts a place on a road that the vehicle may use, though a closed one is nearer', () => {
    const planned = plan([{ ...at(0.5, 0), lat: 52.0001 }, at(3, 3.5)], { '0-0': { motor_vehicle: 'no' } });
    expect(planned.ok && planned.value.places[0]?.awayM).toBeGreaterThan(50);
    expect(waysOf(planned)).not.toContain(100);
  });
});

describe('a plan that cannot be made', () => {
  const codeOf = (planned: ReturnType<typeof plan>) => (planned.ok ? 'made' : planned.error.code);

  it.each([
    ['place missing', [at(0, 0)]],
    ['place twice', [at(0, 0.5), at(0, 0.5)]],
    ['place too many', Array.from({ length: 101 }, (_, i) => at(0, i / 30))],
    ['place off the Earth', [at(0, 0), { lat: 99, lon: 0 }]],
    ['place off the map', [at(0, 0.5), { lat: 54, lon: 5 }]],
    ['place swapped', [at(0, 0.5), { lat: 10.003, lon: 52.003 }]],
  ])('says %s', (code, places) => {
    expect(codeOf(plan(places))).toBe(code);
  });

  it('says that no road takes the vehicle', () => {
    const closed = Object.fromEntries(
      NAMES.flatMap(([x, y]) => [`${x}-${y}`, `${x}|${y}`]).map((name) => [name, { maxheight: '2' }]),
    );
    expect(codeOf(plan([at(0, 0.5), at(3, 3.5)], closed))).toBe('place closed');
  });
});
