import { describe, expect, it } from 'vitest';
import type { Tags } from '../../../geo/roads/roads.ts';
import type { PlanInput, PlanPlace } from '../../../geo/wayround/plan/plan-input.ts';
import { planDrive } from '../../../geo/wayround/plan.ts';
import { type MapSketch, roadsFrom } from '../../support/build-roads.ts';
import { COACH_BUILT } from '../../support/coach-built.ts';
import { endsWhereverCancelled } from '../../support/way-round/cancelled.ts';

/** A ring of four streets, 2 km about, with a dead end off it: 0 south-west, 1 south-east, 2 north-east, 3 north-west. */
const RING: MapSketch['nodes'] = {
  '0': [52, 10],
  '1': [52, 10.01],
  '2': [52.006, 10.01],
  '3': [52.006, 10],
  end: [51.998, 10.005],
  off: [52, 10.005],
};
const STREET = { highway: 'residential', surface: 'asphalt' };
const RING_WAYS = [
  { id: 1, refs: ['0', 'off', '1'], tags: STREET },
  { id: 2, refs: ['1', '2'], tags: STREET },
  { id: 3, refs: ['2', '3'], tags: STREET },
  { id: 4, refs: ['3', '0'], tags: STREET },
  { id: 5, refs: ['off', 'end'], tags: STREET },
];
const [SOUTH, NORTH]: [PlanPlace, PlanPlace] = [
  { lat: 52, lon: 10.002 },
  { lat: 52.006, lon: 10.005 },
];

function plan(
  places: readonly PlanPlace[],
  { nodes = {}, ways = [] }: Partial<MapSketch> = {},
  more: Partial<PlanInput> = {},
) {
  const roads = roadsFrom({ nodes: { ...RING, ...nodes }, ways: [...RING_WAYS, ...ways] });
  return planDrive({
    roads,
    card: COACH_BUILT,
    places,
    program: 'test',
    made: '2027-01-01T00:00:00Z',
    ...more,
  });
}

function problemOf(planned: ReturnType<typeof plan>): { code: string; message: string } {
  if (planned.ok) throw new Error('a plan was made');
  return planned.error;
}

/** A road of two pieces far from the ring. */
function apart(lat: number, tags: Tags = STREET): Partial<MapSketch> {
  const nodes: MapSketch['nodes'] = { a: [lat, 10], b: [lat, 10.01], c: [lat, 10.02] };
  return { nodes, ways: [{ id: 9, refs: ['a', 'b', 'c'], tags }] };
}

/** More of the same town, so that a dead end is but a small part of it. */
const TOWN: Pick<MapSketch, 'nodes' | 'ways'> = {
  nodes: Object.fromEntries(
    Array.from({ length: 12 }, (_, i) => [
      [`n${i}`, [52.006, 10.01 + (i + 1) / 1000]] as const,
      [`s${i}`, [52.004, 10.01 + (i + 1) / 1000]] as const,
    ]).flat(),
  ),
  ways: [
    { id: 20, refs: ['2', ...Array.from({ length: 12 }, (_, i) => `n${i}`)], tags: STREET },
    { id: 21, refs: Array.from({ length: 12 }, (_, i) => `s${i}`), tags: STREET },
    ...Array.from({ length: 12 }, (_, i) => ({ id: 22 + i, refs: [`n${i}`, `s${i}`], tags: STREET })),
  ],
};

describe('the end of a plan', () => {
  const dead = { lat: 51.9985, lon: 10.005 };
  const saidOf = (places: readonly PlanPlace[], more: Partial<MapSketch> = {}, input = {}) => {
    const made = plan(places, { nodes: TOWN.nodes, ways: [...TOWN.ways, ...(more.ways ?? [])] }, input);
    if (!made.ok) throw new Error(made.error.message);
    expect(made.value.report.cautions).toEqual(expect.arrayContaining([...made.value.say]));
    return made.value.say.join(' ');
  };
  const MUST_TURN =
    /At the end, place 2, the vehicle has to turn round to leave again: .* on that road nothing tells/;

  it('on a dead end with no room mapped to turn is told', () => {
    expect(saidOf([SOUTH, dead])).toMatch(MUST_TURN);
    expect(saidOf([SOUTH, NORTH])).toBe('');
  });

  it('is left the way it was come where a loop leads back', () => {
    const loop = { id: 6, refs: ['end', '0'], tags: STREET };
    expect(saidOf([SOUTH, dead], { ways: [loop] })).toBe('');
  });

  it('on a road that reaches beyond these roads is judged by those that were read farther off', () => {
    expect(saidOf([SOUTH, dead], {}, { turnsToLeave: false })).toBe('');
    expect(saidOf([SOUTH, NORTH], {}, { turnsToLeave: true })).toMatch(MUST_TURN);
  });
});

describe('a place that no drive can lead to', () => {
  it('lies at sea, off all roads', () => {
    expect(problemOf(plan([SOUTH, { lat: 52.2, lon: 10 }]))).toMatchObject({
      code: 'place off the map',
      message: expect.stringMatching(/^Place 2 \(52\.20000, 10\.00000\): no road within 4 km.*on land/),
    });
  });

  it('lies on an island: its road leads nowhere else', () => {
    const { code, message } = problemOf(plan([SOUTH, { lat: 52.1, lon: 10.005 }], apart(52.1)));
    expect(code).toBe('no way');
    expect(message).toMatch(
      /^From place 1 to place 2 there is no way: no road on the map leads from one to the other/,
    );
  });

  it('lies on a road closed to all, and no other is near', () => {
    const closed = apart(52.1, { ...STREET, access: 'no' });
    expect(problemOf(plan([SOUTH, { lat: 52.1, lon: 10.005 }], closed))).toMatchObject({
      code: 'place closed',
      message: expect.stringMatching(
        /no road within 4 km is open to this vehicle\. The nearest, 10 m from it, is closed to it\. .*access=no/,
      ),
    });
  });

  it('lies where only a path is mapped', () => {
    const path = apart(52.1, { highway: 'footway' });
    expect(problemOf(plan([SOUTH, { lat: 52.1, lon: 10.005 }], path))).toMatchObject({
      code: 'place closed',
      message: expect.stringMatching(/no road within 4 km is open to this vehicle\. Only paths and the like/),
    });
  });

  it('can be left only by turning round where there is no room', () => {
    const dead = { lat: 51.9985, lon: 10.005 };
    const { code, message } = problemOf(plan([SOUTH, dead, NORTH]));
    expect(code).toBe('no way');
    // to end there would leave it standing there
    expect(message).toMatch(/Move place 2 to a road that leads on, or to where the vehicle can turn\.$/);
    expect(message).toMatch(
      /^From place 2 this vehicle comes to place 3 only by turning round at place 2, .*no room/,
    );
    // however often it comes there, the first time is told
    const often = Array.from({ length: 100 }, (_, i) => (i % 2 === 0 ? SOUTH : dead));
    expect(problemOf(plan(often)).message).toMatch(/only by turning round at place 2,/);
    expect(plan([SOUTH, dead]).ok && plan([dead, NORTH]).ok).toBe(true);
  });

  it('lies across a gap between two maps', () => {
    // a second town 30 km off, large enough to lead somewhere in itself
    const far = Object.entries(RING).map(([name, [lat, lon]]) => [`far ${name}`, [lat + 0.27, lon]] as const);
    const ways = RING_WAYS.map(({ id, refs, tags }) => ({
      id: id + 100,
      refs: refs.map((ref) => `far ${ref}`),
      tags,
    }));
    expect(
      problemOf(plan([SOUTH, { lat: 52.276, lon: 10.005 }], { nodes: Object.fromEntries(far), ways })),
    ).toMatchObject({
      code: 'no way',
      message: expect.stringMatching(
        /^From place 1 to place 2 there is no way: no road on the map leads .*load more of the map\.$/,
      ),
    });
  });
});

describe('a place on private ground', () => {
  const yard = (access: string): Partial<MapSketch> => ({
    nodes: { in: [52.01, 10.005] },
    ways: [{ id: 8, refs: ['3', 'in'], tags: { highway: 'service', access } }],
  });

  it('may be where the drive ends, and its permission is not known', () => {
    const planned = plan([SOUTH, { lat: 52.0098, lon: 10.0049 }], yard('private'));
    if (!planned.ok) throw new Error(planned.error.message);
    expect(planned.value.report.roads.at(-1)?.way).toBe(8);
    expect(planned.value.report.findings.map(({ level }) => level)).not.toContain('barred');
    expect(planned.value.report.findings.map(({ subject }) => subject)).toContain('access');
  });
});

describe('a plan that is cancelled', () => {
  it('ends in whatever phase it is, and nothing is made', () => {
    endsWhereverCancelled((lookUp) => plan([SOUTH, NORTH], {}, { lookUp }));
  });
});
