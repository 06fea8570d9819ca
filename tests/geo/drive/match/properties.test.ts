import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Drive, Stretch } from '../../../../geo/drive/drive.ts';
import type { Route } from '../../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { nodesOnDrive } from '../../../../geo/drive/nodes-along.ts';
import { pointAt } from '../../../../geo/drive/point-at.ts';
import { distanceM } from '../../../../geo/earth/sphere.ts';
import { wayAlong } from '../../../../geo/graph/road-graph.ts';
import type { Roads } from '../../../../geo/roads/roads.ts';
import { displace, randomDrive, seeded, simplify, trackOf } from '../../../support/random-drives.ts';
import { type At, mapOf, roadsDriven, type WaySketch } from './sketch.ts';

/** A crooked town: a grid of two-way streets, some missing, each street one way over several blocks. */
function town(
  seed: number,
  size: number,
  origin: At = [0, 0],
  firstId = 1,
): { nodes: Record<string, At>; ways: WaySketch[] } {
  const random = seeded(seed);
  const nodes: Record<string, At> = {};
  const name = (i: number, j: number) => `${firstId}:${i},${j}`;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      nodes[name(i, j)] = [origin[0] + i * 180 + 50 * random(), origin[1] + j * 180 + 50 * random()];
  const ways: WaySketch[] = [];
  let id = firstId;
  const street = (names: string[]) => {
    let run: string[] = [];
    for (const node of names) {
      run.push(node);
      if (run.length > 1 && random() < 0.3) {
        ways.push({ id: id++, refs: random() < 0.5 ? run : [...run].reverse() });
        run = random() < 0.2 ? [] : [node];
      }
    }
    if (run.length > 1) ways.push({ id: id++, refs: run });
  };
  for (let i = 0; i < size; i++) {
    street(Array.from({ length: size }, (_, j) => name(i, j)));
    street(Array.from({ length: size }, (_, j) => name(j, i)));
  }
  return { nodes, ways };
}

const seeds = fc.integer({ min: 1, max: 1_000_000 });

/** A town and a drive in it; undefined where chance gave no drive. */
function townDrive(seed: number): { roads: Roads; route: Route } | undefined {
  const { nodes, ways } = town(seed, 7);
  const roads = mapOf(nodes, ways);
  const drive = randomDrive(roads, 1500, seeded(seed + 1));
  if (drive === undefined) return undefined;
  const moved = displace(drive, 4, seeded(seed + 2));
  return { roads, route: trackOf(seed % 2 === 0 ? moved : simplify(moved, 8)) };
}

function stretchesOf(drive: Drive): Stretch[] {
  return drive.legs.filter((leg) => leg.kind === 'stretch');
}

/** An end beside a junction may be laid on either of two roads for a few metres. */
function withoutBrushes(drive: Drive): Stretch[] {
  const stretches = stretchesOf(drive);
  return stretches.filter(({ fromM, toM }, i) => (i > 0 && i < stretches.length - 1) || toM - fromM > 10);
}

describe('any drive', () => {
  it('is made of legs that follow on each other and add up', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const made = townDrive(seed);
        if (made === undefined) return;
        const { roads, route } = made;
        const drive = followRoads(route, roads);
        let atM = 0;
        let last: Stretch | undefined;
        for (const leg of drive.legs) {
          if (leg.kind === 'gap') continue;
          expect(leg.fromM).toBeCloseTo(atM, 6);
          expect(leg.toM).toBeGreaterThan(leg.fromM);
          atM = leg.toM;
          if (leg.kind === 'offMap') {
            last = undefined;
            continue;
          }
          const onWay = leg.forward ? leg.alongToM - leg.alongFromM : leg.alongFromM - leg.alongToM;
          expect(onWay).toBeCloseTo(leg.toM - leg.fromM, 6);
          const along = wayAlong(roads, leg.way);
          expect(Math.min(leg.alongFromM, leg.alongToM)).toBeGreaterThanOrEqual(-1e-6);
          expect(Math.max(leg.alongFromM, leg.alongToM)).toBeLessThanOrEqual((along.at(-1) ?? 0) + 1e-6);
          if (last !== undefined) expectJoined(last, leg, drive, roads);
          last = leg;
        }
        expect(drive.lengthM).toBeCloseTo(atM, 6);
        for (const span of [...drive.guessed, ...drive.doubtful]) {
          expect(span.fromM).toBeGreaterThanOrEqual(-1e-6);
          expect(span.toM).toBeLessThanOrEqual(drive.lengthM + 1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('meets the same roads the other way round when driven back', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const made = townDrive(seed);
        if (made === undefined) return;
        const there = withoutBrushes(followRoads(made.route, made.roads));
        const back = withoutBrushes(followRoads(reversed(made.route), made.roads)).reverse();
        expect(back.map((stretch) => [stretch.way, !stretch.forward])).toEqual(
          there.map((stretch) => [stretch.way, stretch.forward]),
        );
      }),
      { numRuns: 40 },
    );
  });

  it('is the same in another place on Earth', () => {
    fc.assert(
      fc.property(seeds, fc.double({ min: -170, max: 170, noNaN: true }), (seed, east) => {
        const made = townDrive(seed);
        if (made === undefined) return;
        const here = followRoads(made.route, made.roads);
        const { nodes, ways } = town(seed, 7);
        const there = shift(mapOf(nodes, ways), east);
        const moved = followRoads(shiftRoute(made.route, east), there);
        expect(roadsDriven(moved, there)).toBe(roadsDriven(here, made.roads));
      }),
      { numRuns: 20 },
    );
  });

  it('does not change when the map grows somewhere else', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const made = townDrive(seed);
        if (made === undefined) return;
        const { nodes, ways } = town(seed, 7);
        const more = town(seed + 3, 5, [20_000, 5_000], 1000);
        const larger = mapOf({ ...nodes, ...more.nodes }, [...ways, ...more.ways]);
        expect(followRoads(made.route, larger)).toEqual(followRoads(made.route, made.roads));
      }),
      { numRuns: 15 },
    );
  });

  it('passes each node of its roads once, in order', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const made = townDrive(seed);
        if (made === undefined) return;
        const { roads, route } = made;
        const drive = followRoads(route, roads);
        const passed = nodesOnDrive(drive, roads);
        passed.forEach((node, i) => {
          const before = passed[i - 1];
          if (before !== undefined) expect(node.atM).toBeGreaterThanOrEqual(before.atM);
          if (before?.node === node.node) expect(node.atM).toBeGreaterThan(before.atM);
          const place = pointAt(drive, roads, node.atM);
          const lat = roads.nodes.lat[node.node]!;
          const lon = roads.nodes.lon[node.node]!;
          expect(distanceM(place?.lat ?? 0, place?.lon ?? 0, lat, lon)).toBeLessThan(0.01);
        });
      }),
      { numRuns: 40 },
    );
  });
});

function expectJoined(a: Stretch, b: Stretch, drive: Drive, roads: Roads): void {
  const alone = (stretch: Stretch): Drive => ({ ...drive, legs: [stretch] });
  const end = pointAt(alone(a), roads, a.toM);
  const start = pointAt(alone(b), roads, b.fromM);
  expect(distanceM(end?.lat ?? 0, end?.lon ?? 0, start?.lat ?? 9, start?.lon ?? 9)).toBeLessThan(0.01);
}

function reversed(route: Route): Route {
  const segments = route.segments.map(({ lat, lon, timeMs }) => ({
    lat: lat.slice().reverse(),
    lon: lon.slice().reverse(),
    timeMs,
  }));
  return { ...route, segments: segments.reverse() };
}

function shift(roads: Roads, east: number): Roads {
  // the index answers for the old place: asked about the new one it looks there
  const lon = roads.nodes.lon.map((value) => wrap(value + east));
  const near: Roads['index']['near'] = (lat, at, radiusM) => roads.index.near(lat, wrap(at - east), radiusM);
  return { ...roads, nodes: { ...roads.nodes, lon }, index: { ...roads.index, near } };
}

function shiftRoute(route: Route, east: number): Route {
  const segments = route.segments.map((segment) => ({
    ...segment,
    lon: segment.lon.map((lon) => wrap(lon + east)),
  }));
  return { ...route, segments };
}

function wrap(lon: number): number {
  return lon > 180 ? lon - 360 : lon < -180 ? lon + 360 : lon;
}
