import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Drive } from '../../../../geo/drive/drive.ts';
import { ferrySpeed, readDurationS } from '../../../../geo/drive/times/ferry-speed.ts';
import { sayTimeNote } from '../../../../geo/drive/times/say-time-note.ts';
import { secondsAt, timetable } from '../../../../geo/drive/times/timetable.ts';
import { traceDrive } from '../../../../geo/drive/times/trace.ts';
import { driveOver, makeRoads, place } from './make-drive.ts';

const vehicle = { grossKg: 3500, unladenKg: 2900 };
const line = (length: number, step = 100): [number, number][] =>
  Array.from({ length: length / step + 1 }, (_, i) => [i * step, 0]);
const A_ROAD = { highway: 'primary', maxspeed: '60 mph' };

function timed(ways: Parameters<typeof makeRoads>[0], nodes: Parameters<typeof makeRoads>[1] = []) {
  const roads = makeRoads(ways, nodes);
  return timetable(
    driveOver(
      roads,
      ways.map((_, i) => i),
    ),
    roads,
    { vehicle },
  );
}

describe('a drive’s timetable', () => {
  it('rises from nothing to the whole, and answers between', () => {
    const table = timed([{ at: line(5000), tags: A_ROAD }]);
    expect(secondsAt(table, 0)).toBe(0);
    expect(secondsAt(table, -10)).toBe(0);
    expect(secondsAt(table, Number.NaN)).toBe(0);
    expect(secondsAt(table, 99_999)).toBe(table.totalS);
    expect(secondsAt(table, 2550)).toBeGreaterThan(secondsAt(table, 2500));
    for (let i = 1; i < table.seconds.length; i++)
      expect(table.seconds[i]).toBeGreaterThan(table.seconds[i - 1]!);
  });

  it('of 20 km of straight A road is that at the likely speed, and a little for setting off and stopping', () => {
    const table = timed([{ at: line(20_000), tags: A_ROAD }]);
    const [speed] = table.speeds;
    const plainS = 20_000 / ((speed?.kmh ?? 1) / 3.6);
    expect(table.totalS).toBeGreaterThan(plainS);
    expect(table.totalS).toBeLessThan(plainS + 60);
    expect(speed?.mapped).toBe(true);
  });

  it('is the same wherever the mapper cut the way', () => {
    const whole = timed([{ at: line(4000), tags: A_ROAD }]);
    const cut = timed([
      { at: line(4000).slice(0, 17), tags: A_ROAD },
      { at: line(4000).slice(16), tags: A_ROAD },
    ]);
    expect(cut.totalS).toBeCloseTo(whole.totalS, 6);
  });

  it('is the same on a way drawn against the drive', () => {
    const roads = makeRoads([{ at: line(4000), tags: A_ROAD }]);
    const there = timetable(driveOver(roads, [0]), roads, { vehicle });
    const back = timetable(driveOver(roads, [-1]), roads, { vehicle });
    expect(back.totalS).toBeCloseTo(there.totalS, 6);
  });

  it('grows with lights, humps and a level crossing, and not with a give-way line for those who come back', () => {
    const at = line(2000);
    const plain = timed([{ at, tags: A_ROAD }]).totalS;
    const withNode = (tags: Record<string, string>) =>
      timed([{ at, tags: A_ROAD }], [{ at: [1000, 0], tags }]).totalS;
    expect(withNode({ highway: 'traffic_signals' })).toBeGreaterThan(plain + 12);
    expect(withNode({ traffic_calming: 'hump' })).toBeGreaterThan(plain + 5);
    expect(withNode({ railway: 'level_crossing' })).toBeGreaterThan(plain + 5);
    expect(withNode({ highway: 'give_way', direction: 'backward' })).toBe(plain);
    expect(withNode({ highway: 'give_way', direction: 'forward' })).toBeGreaterThan(plain);
    expect(withNode({ highway: 'crossing' })).toBe(plain);
  });

  it('waits once at a junction, however many of its signals are mapped, and again at the next', () => {
    const at = line(2000, 50);
    const lights = (...places: number[]) =>
      timed(
        [{ at, tags: A_ROAD }],
        places.map((m) => ({ at: [m, 0] as const, tags: { highway: 'traffic_signals' } })),
      ).totalS;
    const one = lights(1000);
    expect(lights(1000, 1050)).toBeCloseTo(one, 6);
    expect(lights(1000, 1200)).toBeGreaterThan(one + 12);
  });

  it('does not give way, too, where it turns at the signals it has waited at', () => {
    const ways = [
      {
        at: [
          [0, 0],
          [480, 0],
          [500, 0],
        ] as const,
        tags: A_ROAD,
      },
      {
        at: [
          [500, 0],
          [500, 500],
        ] as const,
        tags: A_ROAD,
      },
    ];
    const signals = { highway: 'traffic_signals' };
    const atTheCorner = timed(ways, [{ at: [500, 0], tags: signals }]).totalS;
    const atTheLine = timed(ways, [{ at: [480, 0], tags: signals }]).totalS;
    expect(Math.abs(atTheLine - atTheCorner)).toBeLessThan(4);
  });

  it('slows for a hairpin and for a turn into another road, not for a road that bends gently', () => {
    const straight = timed([{ at: line(2000), tags: A_ROAD }]).totalS;
    const hairpin = timed([
      {
        at: [
          [0, 0],
          [900, 0],
          [980, 4],
          [1000, 20],
          [980, 36],
          [900, 40],
          [0, 40],
        ],
        tags: A_ROAD,
      },
    ]);
    expect(hairpin.totalS).toBeGreaterThan((straight * (hairpin.atM.at(-1) as number)) / 2000 + 8);
    const turn = timed([
      {
        at: [
          [0, 0],
          [500, 0],
          [1000, 0],
        ],
        tags: A_ROAD,
      },
      {
        at: [
          [1000, 0],
          [1000, 500],
          [1000, 1000],
        ],
        tags: A_ROAD,
      },
    ]);
    expect(turn.totalS).toBeGreaterThan(straight + 8);
    // an arc of 1,000 m radius, a point every 10 m
    const arc = Array.from({ length: 201 }, (_, i): [number, number] => [
      1000 * Math.sin(i / 100),
      1000 - 1000 * Math.cos(i / 100),
    ]);
    expect(timed([{ at: arc, tags: A_ROAD }]).totalS).toBeLessThan(straight + 2);
  });

  it('is not fooled by points a mapper set close together and slightly off the line', () => {
    const wobbly = Array.from({ length: 1001 }, (_, i): [number, number] => [i * 2, i % 2 === 0 ? 0 : 0.3]);
    const straight = timed([{ at: line(2000), tags: A_ROAD }]).totalS;
    expect(timed([{ at: wobbly, tags: A_ROAD }]).totalS).toBeLessThan(straight * 1.15);
  });

  it('says what was assumed: general limits, the unladen mass, clear roads', () => {
    const roads = makeRoads([{ at: line(3000), tags: { highway: 'primary' } }]);
    const table = timetable(driveOver(roads, [0]), roads, { vehicle: { grossKg: 3500 } });
    const said = table.notes.map((note) => sayTimeNote(note, 'metric')).join('\n');
    expect(said).toContain('No speed limit is mapped on 3.0 km');
    expect(table.notes.map((note) => sayTimeNote(note, 'imperial')).join()).toContain('is mapped on 1.9 mi:');
    expect(said).toContain('unladenKg');
    expect(said).toContain('no queues');
    expect(table.countries).toEqual([{ fromM: 0, toM: expect.closeTo(3000, -1), country: 'GB' }]);
  });

  it('takes the country given where the place tells none', () => {
    const sea = { lat: 57, lon: 2.3 };
    const roads = makeRoads([{ at: line(1000), tags: { highway: 'primary' } }], [], sea);
    const drive = driveOver(roads, [0]);
    expect(timetable(drive, roads, { vehicle }).notes.join()).toContain('country is not known');
    const asGb = timetable(drive, roads, { vehicle, country: 'GB' });
    expect(asGb.speeds[0]?.legalKmh).toBeCloseTo(96.56, 1);
  });
});

describe('a ferry', () => {
  const ferry = (tags: Record<string, string>) => [
    { at: line(1000), tags: A_ROAD },
    {
      at: [
        [1000, 0],
        [4000, 0],
      ] as [number, number][],
      tags: { route: 'ferry', ...tags },
      kind: 1 as const,
    },
    {
      at: [
        [4000, 0],
        [5000, 0],
      ] as [number, number][],
      tags: A_ROAD,
    },
  ];

  it('takes its mapped duration', () => {
    const table = timed(ferry({ duration: '00:20', name: 'Sandbank' }));
    expect(secondsAt(table, 4000) - secondsAt(table, 1000)).toBeCloseTo(1200, 0);
    expect(table.notes.join()).toContain('Sandbank takes 20 minutes as mapped');
  });

  it('without one goes at 15 km/h, and that is said', () => {
    const table = timed(ferry({}));
    expect(secondsAt(table, 4000) - secondsAt(table, 1000)).toBeCloseTo(720, -1);
    expect(table.notes.join()).toContain('15 km/h is assumed');
  });

  it.each([
    ['00:45', 2700],
    ['1:10:30', 4230],
    ['25', 1500],
    ['PT1H30M', 5400],
    ['PT45M', 2700],
    ['P1DT2H', 93_600],
    ['0', undefined],
    ['soon', undefined],
    ['', undefined],
    ['P', undefined],
  ])('duration "%s" is %s s', (text, seconds) => expect(readDurationS(text)).toBe(seconds));

  it('with a duration no ship can keep is not believed, and that is said', () => {
    const table = timed(ferry({ duration: '00:01' }));
    expect(secondsAt(table, 4000) - secondsAt(table, 1000)).toBeCloseTo(720, -1);
    expect(table.notes.join()).toContain('mapped 00:01');
  });

  it('never goes at no speed at all', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 12 }),
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        (duration, length) => ferrySpeed({ duration }, length).kmh > 0,
      ),
    );
  });
});

describe('parts of a drive without a road', () => {
  const off: Drive = {
    lengthM: 2000,
    legs: [
      {
        kind: 'offMap',
        fromM: 0,
        toM: 2000,
        lat: [place([0, 0]).lat, place([0, 2000]).lat],
        lon: [-0.73, -0.73],
      },
    ],
    guessed: [],
    doubtful: [],
    brokenTurns: [],
  };

  it('off the map go at 20 km/h, and that is said', () => {
    const table = timetable(off, makeRoads([]), { vehicle });
    expect(table.totalS).toBeCloseTo(360, 0);
    expect(table.notes.map((note) => sayTimeNote(note, 'metric')).join()).toContain(
      '2.0 km lie off the mapped roads: 20 km/h',
    );
  });

  it('between two segments of the file cost no time, and that is said', () => {
    const roads = makeRoads([
      { at: line(1000), tags: A_ROAD },
      {
        at: [
          [9000, 0],
          [10_000, 0],
        ],
        tags: A_ROAD,
      },
    ]);
    const both = driveOver(roads, [0, 1]);
    const [first, second] = both.legs;
    if (!first || !second) throw new Error('two legs expected');
    const gap = {
      kind: 'gap' as const,
      atM: 1000,
      straightM: 8000,
      from: place([1000, 0]),
      to: place([9000, 0]),
    };
    const table = timetable({ ...both, legs: [first, gap, second] }, roads, { vehicle });
    const one = timed([{ at: line(1000), tags: A_ROAD }]);
    expect(table.totalS).toBeCloseTo(2 * one.totalS, 0);
    expect(table.notes.join()).toContain('breaks once');
    expect(secondsAt(table, 1000)).toBeCloseTo(one.totalS, 0);
  });

  it('make an empty drive an empty timetable', () => {
    const table = timetable({ ...off, lengthM: 0, legs: [] }, makeRoads([]), { vehicle });
    expect(table.totalS).toBe(0);
    expect(secondsAt(table, 5)).toBe(0);
  });
});

describe('the trace of a drive', () => {
  it('of part of a way begins and ends between its nodes', () => {
    const roads = makeRoads([{ at: line(300), tags: A_ROAD }]);
    const part = {
      kind: 'stretch' as const,
      way: 0,
      forward: false,
      alongFromM: 250,
      alongToM: 30,
      fromM: 0,
      toM: 220,
    };
    const trace = traceDrive(
      { lengthM: 220, legs: [part], guessed: [], doubtful: [], brokenTurns: [] },
      roads,
    );
    expect([...trace.atM].map(Math.round)).toEqual([0, 50, 150, 220]);
    expect([...trace.node].map((node) => node >= 0)).toEqual([false, true, true, false]);
    expect(trace.lon[0]).toBeCloseTo(place([250, 0]).lon, 5);
    expect(trace.lon[3]).toBeCloseTo(place([30, 0]).lon, 5);
  });

  it('never runs backwards, wherever a stretch is cut', () => {
    const roads = makeRoads([{ at: line(1000), tags: A_ROAD }]);
    const cut = fc.double({ min: 0, max: 1000, noNaN: true });
    fc.assert(
      fc.property(cut, cut, (a, b) => {
        const leg = {
          kind: 'stretch' as const,
          way: 0,
          forward: a <= b,
          alongFromM: a,
          alongToM: b,
          fromM: 0,
          toM: Math.abs(b - a),
        };
        const { atM } = traceDrive(
          { lengthM: leg.toM, legs: [leg], guessed: [], doubtful: [], brokenTurns: [] },
          roads,
        );
        for (let i = 1; i < atM.length; i++) expect(atM[i]).toBeGreaterThanOrEqual(atM[i - 1]!);
        expect(atM.at(-1)).toBeCloseTo(leg.toM, 2);
      }),
    );
  });
});
