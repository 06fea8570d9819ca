import { checkDrive } from '../../../geo/check.ts';
import type { Span } from '../../../geo/drive/drive.ts';
import type { Route } from '../../../geo/drive/gpx/route.ts';
import { given } from '../../../geo/given.ts';
import type { LocalNote } from '../../../geo/notes/note.ts';
import { type DriveReport, driveReportSchema } from '../../../geo/report/report.ts';
import type { Tags } from '../../../geo/roads/roads.ts';
import { COACHBUILT } from '../ask.ts';
import { type MapSketch, roadsFrom } from '../build-roads.ts';
import { driveOn, type Step } from '../drive-on.ts';

const ORIGIN = { lat: 52.67, lon: -0.73 };
const M_PER_DEGREE = 111_195;

/** A place so many metres east and north of the test map's origin. */
export function metres(east: number, north: number): [number, number] {
  const perLon = M_PER_DEGREE * Math.cos((ORIGIN.lat * Math.PI) / 180);
  return [ORIGIN.lat + north / M_PER_DEGREE, ORIGIN.lon + east / perLon];
}

export function at(east: number, north: number): { lat: number; lon: number } {
  const [lat, lon] = metres(east, north);
  return { lat, lon };
}

/** Mill Lane, 1,000 m east in two ways (1 and 2), joined at 500 m, where Side Road (3) comes in from the south. */
export function millLane(
  tags: Tags = {},
  more: Partial<MapSketch> & { readonly north?: number } = {},
): MapSketch {
  const { north = 0, nodes, ways = [], nodeTags } = more;
  const lane = { highway: 'tertiary', name: 'Mill Lane', ...tags };
  return {
    nodes: {
      a: metres(0, north),
      b: metres(300, north),
      c: metres(500, north),
      d: metres(700, north),
      e: metres(1000, north),
      s: metres(500, north - 400),
      ...nodes,
    },
    ...given({ nodeTags }),
    ways: [
      { id: 1, refs: ['a', 'b', 'c'], tags: lane },
      { id: 2, refs: ['c', 'd', 'e'], tags: lane },
      { id: 3, refs: ['s', 'c'], tags: { highway: 'residential', name: 'Side Road' } },
      ...ways,
    ],
  };
}

/** A railway on a bridge over Mill Lane, so many metres along it; no height is mapped there. */
export function railwayOver(east: number, id = 9): Partial<MapSketch> {
  return {
    nodes: { n: metres(east, 60), m: metres(east, -60) },
    ways: [{ id, refs: ['n', 'm'], tags: { railway: 'rail', bridge: 'yes', layer: '1' } }],
  };
}

/** A note on Mill Lane, 250 m along its first way. */
export function note(fields: Partial<LocalNote> = {}): LocalNote {
  return {
    id: 'n1',
    at: at(250, 0),
    osm: { type: 'way', id: 1 },
    road: { name: 'Mill Lane', class: 'tertiary' },
    say: 'Low arch',
    seen: '2026-05-01',
    by: 'AB',
    ...fields,
  };
}

const NO_LINE: Route = {
  name: 'Mill Lane',
  kind: 'track',
  number: 1,
  segments: [
    {
      lat: Float64Array.of(0, 0),
      lon: Float64Array.of(0, 1),
      timeMs: Float64Array.of(Number.NaN, Number.NaN),
    },
  ],
};

/** The report of a drive over these ways with these notes; every report holds to the schema. */
export function checkNoted(
  sketch: MapSketch,
  localNotes: readonly LocalNote[],
  {
    steps = [1, 2],
    guessed = [],
    made = '2027-06-01T00:00:00Z',
    card = COACHBUILT,
  }: {
    readonly steps?: readonly Step[];
    readonly guessed?: readonly Span[];
    readonly made?: string;
    readonly card?: typeof COACHBUILT;
  } = {},
): DriveReport {
  const roads = roadsFrom(sketch);
  const wayIndex = new Map(sketch.ways.map(({ id }, i) => [id, i]));
  const drive = driveOn({ roads, wayIndex }, steps, { guessed });
  const report = checkDrive({
    route: NO_LINE,
    file: 'mill-lane.gpx',
    drive,
    roads,
    card,
    localNotes,
    program: 'test',
    made,
  });
  return driveReportSchema.parse(JSON.parse(JSON.stringify(report)));
}
