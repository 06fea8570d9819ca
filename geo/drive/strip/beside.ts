import { toRad } from '../../earth/angles.ts';
import { localFrame } from '../../earth/frame.ts';
import { bearingDeg } from '../../earth/sphere.ts';
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
type Run = { fromM: number; toM: number; side: Side; kind: Kind };

/** What lies to the left and right, as runs: water before woods before houses where there are several. */
export function besideTheRoad(trace: DriveTrace, lengthM: number, roads: Roads): Run[] {
  const stepM = Math.max(STEP_LEAST_M, lengthM / STEPS_MOST);
  const places = placesEvery(trace, lengthM, stepM);
  const runs: Run[] = [];
  const open: Partial<Record<Side, Run>> = {};
  places.forEach((place, i) => {
    const ahead = places[i + 1] ?? place;
    const back = places[i - 1] ?? place;
    const headingDeg = bearingDeg(back.lat, back.lon, ahead.lat, ahead.lon);
    const kinds = kindsAt(place, toRad(headingDeg), roads);
    for (const side of SIDES) {
      const kind = kinds[side];
      const run = open[side];
      if (run !== undefined && run.kind === kind) run.toM = Math.min(lengthM, place.atM + stepM);
      else if (kind !== undefined && place.atM < lengthM) {
        const fresh = { fromM: place.atM, toM: Math.min(lengthM, place.atM + stepM), side, kind };
        runs.push(fresh);
        open[side] = fresh;
      } else delete open[side];
    }
  });
  return runs;
}

const SIDES: readonly Side[] = ['left', 'right'];

function kindsAt({ lat, lon }: AlongPlace, heading: number, roads: Roads): Partial<Record<Side, Kind>> {
  const frame = localFrame(lat, lon);
  const [sin, cos] = [Math.sin(heading), Math.cos(heading)];
  const kinds: Partial<Record<Side, Kind>> = {};
  const tell = (side: Side, kind: Kind) => {
    const before = kinds[side];
    if (before === undefined || RANK[kind] < RANK[before]) kinds[side] = kind;
  };
  const areas = areasOf(roads);
  for (const side of SIDES)
    for (const asideM of ASIDE_M) {
      const right = side === 'right' ? asideM : -asideM;
      // to the right of a heading of north lies east
      const aside = frame.fromXY(right * cos, -right * sin);
      for (const way of areas.at(aside.lat, aside.lon)) {
        const kind = areaKind(roads.ways.tags[way] ?? {});
        if (kind !== undefined) tell(side, kind);
      }
    }
  const low = frame.fromXY(-REACH_M, -REACH_M);
  const high = frame.fromXY(REACH_M, REACH_M);
  for (const { way, seg } of roads.index.inBox(low.lat, low.lon, high.lat, high.lon, 'around')) {
    const kind = lineKind(roads.ways.tags[way] ?? {});
    if (kind === undefined) continue;
    const ref = roads.ways.start[way]! + seg;
    const ends = [ref, ref + 1].map((at) => {
      const node = roads.ways.refs[at]!;
      const { x, y } = frame.toXY(roads.nodes.lat[node]!, roads.nodes.lon[node]!);
      return x * cos - y * sin;
    });
    // a river that crosses lies on both sides
    for (const right of ends) tell(right < 0 ? 'left' : 'right', kind);
  }
  return kinds;
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
