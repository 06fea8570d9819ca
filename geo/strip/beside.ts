import { areasOf } from '../around/areas.ts';
import type { Roads, Tags } from '../roads/roads.ts';
import { bearingDeg, localFrame } from '../route/measure.ts';
import type { DriveTrace } from '../timetable/trace.ts';
import { placesEvery } from './places-every.ts';
import type { Side, Strip } from './strip.ts';

const STEP_LEAST_M = 60;
const STEPS_MOST = 3000;
/** Looked for this far from the middle of the road, to either side. Metres. */
const ASIDE_M = 40;

type Kind = Strip['beside'][number]['kind'];
type Run = { fromM: number; toM: number; side: Side; kind: Kind };

/** Water and woods to the left and right, as runs. */
export function besideTheRoad(trace: DriveTrace, lengthM: number, roads: Roads): Run[] {
  const stepM = Math.max(STEP_LEAST_M, lengthM / STEPS_MOST);
  const places = placesEvery(trace, lengthM, stepM);
  const areas = areasOf(roads);
  const runs: Run[] = [];
  const open: Partial<Record<Side, Run>> = {};
  places.forEach((place, i) => {
    const ahead = places[i + 1] ?? place;
    const back = places[i - 1] ?? place;
    const heading = (bearingDeg(back.lat, back.lon, ahead.lat, ahead.lon) * Math.PI) / 180;
    const frame = localFrame(place.lat, place.lon);
    for (const [side, sign] of SIDES) {
      // to the right of a heading of north lies east
      const aside = frame.fromXY(sign * ASIDE_M * Math.cos(heading), -sign * ASIDE_M * Math.sin(heading));
      const kind = areas
        .at(aside.lat, aside.lon)
        .map((way) => kindOf(roads.ways.tags[way] ?? {}))
        .find((each) => each !== undefined);
      const run = open[side];
      if (run !== undefined && run.kind === kind) run.toM = Math.min(lengthM, place.atM + stepM);
      else if (kind !== undefined) {
        const fresh = { fromM: place.atM, toM: Math.min(lengthM, place.atM + stepM), side, kind };
        runs.push(fresh);
        open[side] = fresh;
      } else delete open[side];
    }
  });
  return runs;
}

const SIDES: readonly [Side, number][] = [
  ['left', -1],
  ['right', 1],
];

function kindOf(tags: Tags): Kind | undefined {
  if (tags['natural'] === 'water' || tags['natural'] === 'bay' || tags['waterway'] === 'riverbank')
    return 'water';
  if (tags['natural'] === 'wood' || tags['landuse'] === 'forest') return 'wood';
  return undefined;
}
