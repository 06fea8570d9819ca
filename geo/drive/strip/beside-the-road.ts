import { toRad } from '../../earth/angles.ts';
import { type LocalFrame, localFrame } from '../../earth/frame.ts';
import type { Point } from '../../earth/point.ts';
import { bearingDeg } from '../../earth/sphere.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { areasOf } from '../beside/areas.ts';
import type { DriveTrace } from '../times/trace.ts';
import { type AlongPlace, placesEvery } from './places-every.ts';
import type { Side, Strip } from './strip.ts';

const STEP_LEAST_M = 60;
const STEPS_MOST = 3000;
/** An area is looked for this far from the middle of the road, the nearer first. Metres. */
const ASIDE_M = [25, 55] as const;
/** Rivers and houses are looked for as far as this. Metres. */
const REACH_M = 45;

type Kind = Strip['beside'][number]['kind'];
type BesideSpan = { fromM: number; toM: number; side: Side; kind: Kind };

/** What lies to the left and right, as spans: water before woods before houses where there are several. */
export function besideTheRoad(trace: DriveTrace, lengthM: number, roads: Roads): BesideSpan[] {
  const stepM = Math.max(STEP_LEAST_M, lengthM / STEPS_MOST);
  const places = placesEvery(trace, lengthM, stepM);
  const spans: BesideSpan[] = [];
  const open: Partial<Record<Side, BesideSpan>> = {};
  places.forEach((place, i) => {
    const ahead = places[i + 1] ?? place;
    const back = places[i - 1] ?? place;
    const headingDeg = bearingDeg(back.lat, back.lon, ahead.lat, ahead.lon);
    const kinds = kindsAt(place, toRad(headingDeg), roads);
    for (const side of SIDES) {
      const kind = kinds[side];
      const last = open[side];
      if (last !== undefined && last.kind === kind) last.toM = Math.min(lengthM, place.atM + stepM);
      else if (kind !== undefined && place.atM < lengthM) {
        const fresh = { fromM: place.atM, toM: Math.min(lengthM, place.atM + stepM), side, kind };
        spans.push(fresh);
        open[side] = fresh;
      } else delete open[side];
    }
  });
  return spans;
}

const SIDES: readonly Side[] = ['left', 'right'];

type Kinds = Partial<Record<Side, Kind>>;

function kindsAt({ lat, lon }: AlongPlace, heading: number, roads: Roads): Kinds {
  const frame = localFrame(lat, lon);
  const ahead = { x: Math.sin(heading), y: Math.cos(heading) };
  const kinds: Kinds = {};
  addAreas(kinds, frame, ahead, roads);
  addLines(kinds, frame, ahead, roads);
  return kinds;
}

function tell(kinds: Kinds, side: Side, kind: Kind | undefined): void {
  const before = kinds[side];
  if (kind !== undefined && (before === undefined || RANK[kind] < RANK[before])) kinds[side] = kind;
}

function addAreas(kinds: Kinds, frame: LocalFrame, ahead: Point, roads: Roads): void {
  const areas = areasOf(roads);
  for (const side of SIDES)
    for (const asideM of ASIDE_M) {
      const right = side === 'right' ? asideM : -asideM;
      // to the right of a heading of north lies east
      const aside = frame.fromXY(right * ahead.y, -right * ahead.x);
      for (const way of areas.at(aside.lat, aside.lon)) tell(kinds, side, areaKind(mappedOn(roads, way)));
    }
}

function addLines(kinds: Kinds, frame: LocalFrame, ahead: Point, roads: Roads): void {
  const { nodes, ways, index } = roads;
  const low = frame.fromXY(-REACH_M, -REACH_M);
  const high = frame.fromXY(REACH_M, REACH_M);
  for (const { way, seg } of index.inBox(low.lat, low.lon, high.lat, high.lon, 'around')) {
    const kind = lineKind(mappedOn({ ways }, way));
    if (kind === undefined) continue;
    const ref = ways.start[way]! + seg;
    // a river that crosses lies on both sides
    for (const at of [ref, ref + 1]) {
      const node = ways.refs[at]!;
      const { x, y } = frame.toXY(nodes.lat[node]!, nodes.lon[node]!);
      tell(kinds, x * ahead.y - y * ahead.x < 0 ? 'left' : 'right', kind);
    }
  }
}

const RANK: Readonly<Record<Kind, number>> = { water: 0, wood: 1, building: 2 };

function areaKind(tags: Tags): Kind | undefined {
  if (tags['natural'] === 'water' || tags['natural'] === 'bay' || tags['waterway'] === 'riverbank')
    return 'water';
  if (tags['natural'] === 'wood' || tags['landuse'] === 'forest') return 'wood';
  return undefined;
}

function lineKind(tags: Tags): Kind | undefined {
  if ((tags['waterway'] === 'river' || tags['waterway'] === 'canal') && tags['tunnel'] === undefined)
    return 'water';
  return tags['building'] !== undefined && tags['building'] !== 'no' ? 'building' : undefined;
}
