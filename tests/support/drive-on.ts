import type { BrokenTurn, Drive, Leg, Span } from '../../geo/drive/drive.ts';
import { distanceM } from '../../geo/earth/sphere.ts';
import type { Roads, SegmentIndex, Tags } from '../../geo/roads/roads.ts';
import { WAY_KIND } from '../../geo/roads/roads.ts';

/** One way of a test map: a chain of nodes by name, with tags. Node `a` stands where `NODES` or the grid puts it. */
export interface TestWay {
  readonly id: number;
  /** node names; the same name is the same node */
  readonly nodes: readonly string[];
  readonly tags: Tags;
  readonly around?: boolean;
}

export interface TestMap {
  readonly roads: Roads;
  readonly wayIndex: ReadonlyMap<number, number>;
}

/** Where a node name lies: `x,y` in hundreds of metres east and north of 50° N 7° E. */
function placeOf(name: string): { lat: number; lon: number } {
  const [x = 0, y = 0] = name.split(',').map(Number);
  return { lat: 50 + (y * 100) / 111_195, lon: 7 + (x * 100) / (111_195 * Math.cos((50 * Math.PI) / 180)) };
}

/** A map from ways whose nodes are named by their place, `x,y` in hundreds of metres. */
export function testMap(
  ways: readonly TestWay[],
  nodeTags: Readonly<Record<string, Tags>> = {},
  incomplete: readonly string[] = [],
): TestMap {
  const names = [...new Set(ways.flatMap((way) => way.nodes))];
  const nodeIndex = new Map(names.map((name, index) => [name, index]));
  const start = new Uint32Array(ways.length + 1);
  const refs: number[] = [];
  for (const [index, way] of ways.entries()) {
    for (const name of way.nodes) refs.push(nodeIndex.get(name) ?? 0);
    start[index + 1] = refs.length;
  }
  const places = names.map(placeOf);
  const nodes = {
    count: names.length,
    id: Float64Array.from(names, (_, index) => 1001 + index),
    lat: Float64Array.from(places, (place) => place.lat),
    lon: Float64Array.from(places, (place) => place.lon),
    tags: new Map(Object.entries(nodeTags).map(([name, tags]) => [nodeIndex.get(name) ?? -1, tags])),
  };
  const kind = (way: TestWay) =>
    way.around ? WAY_KIND.around : way.tags['route'] === 'ferry' ? WAY_KIND.ferry : WAY_KIND.road;
  const roads: Roads = {
    nodes,
    ways: {
      count: ways.length,
      id: Float64Array.from(ways, (way) => way.id),
      start,
      refs: Uint32Array.from(refs),
      kind: Uint8Array.from(ways, kind),
      tags: ways.map((way) => way.tags),
    },
    restrictions: [],
    index: nodeOnlyIndex(ways, refs, start, nodes),
    sources: [],
    notes: [],
    incomplete,
  };
  return { roads, wayIndex: new Map(ways.map((way, index) => [way.id, index])) };
}

/** Finds segments by their end nodes only: enough for what the rules ask. */
function nodeOnlyIndex(
  ways: readonly TestWay[],
  refs: readonly number[],
  start: Uint32Array,
  nodes: { readonly lat: Float64Array; readonly lon: Float64Array },
): SegmentIndex {
  return {
    near: (lat, lon, radiusM) => {
      const found = [];
      for (const [way, testWay] of ways.entries()) {
        if (testWay.around) continue;
        for (let seg = 0; seg + 1 < testWay.nodes.length; seg++)
          for (const t of [0, 1]) {
            const node = refs[start[way]! + seg + t]!;
            const distance = distanceM(lat, lon, nodes.lat[node]!, nodes.lon[node]!);
            if (distance <= radiusM) found.push({ way, seg, t, distanceM: distance });
          }
      }
      return found;
    },
    inBox: () => [],
  };
}

/** A step of a drive: a way id, negative when driven against its drawn order, or a piece off the map or a break. */
export type Step = number | { readonly offMapM: number } | { readonly gapM: number };

/** The drive that runs along whole ways, with nothing matched. */
export function driveOn(
  map: TestMap,
  steps: readonly Step[],
  extra: {
    readonly guessed?: readonly Span[];
    readonly doubtful?: readonly Span[];
    readonly brokenTurns?: readonly BrokenTurn[];
  } = {},
): Drive {
  const legs: Leg[] = [];
  let at = 0;
  for (const step of steps) {
    if (typeof step === 'object' && 'gapM' in step) {
      legs.push({
        kind: 'gap',
        atM: at,
        straightM: step.gapM,
        from: { lat: 50, lon: 7 },
        to: { lat: 50, lon: 7.1 },
      });
      continue;
    }
    if (typeof step === 'object') {
      legs.push({ kind: 'offMap', fromM: at, toM: at + step.offMapM, lat: [50, 50], lon: [7, 7.001] });
      at += step.offMapM;
      continue;
    }
    const way = map.wayIndex.get(Math.abs(step));
    if (way === undefined) throw new Error(`no way ${step} in the test map`);
    const length = wayLengthM(map.roads, way);
    const forward = step > 0;
    legs.push({
      kind: 'stretch',
      way,
      forward,
      alongFromM: forward ? 0 : length,
      alongToM: forward ? length : 0,
      fromM: at,
      toM: at + length,
    });
    at += length;
  }
  return {
    lengthM: at,
    legs,
    guessed: extra.guessed ?? [],
    doubtful: extra.doubtful ?? [],
    brokenTurns: extra.brokenTurns ?? [],
  };
}

function wayLengthM(roads: Roads, way: number): number {
  const { start, refs } = roads.ways;
  const { lat, lon } = roads.nodes;
  let length = 0;
  for (let i = start[way]! + 1; i < start[way + 1]!; i++) {
    const [a, b] = [refs[i - 1]!, refs[i]!];
    length += distanceM(lat[a]!, lon[a]!, lat[b]!, lon[b]!);
  }
  return length;
}
