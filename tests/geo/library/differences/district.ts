import { checkDrive } from '../../../../geo/check.ts';
import type { Route } from '../../../../geo/drive/gpx/route.ts';
import { followRoads } from '../../../../geo/drive/match/follow-roads.ts';
import { METRES_PER_DEGREE } from '../../../../geo/earth/sphere.ts';
import type { DriveReport } from '../../../../geo/report/report.ts';
import type { Roads } from '../../../../geo/roads/roads.ts';
import { COACHBUILT } from '../../../support/ask.ts';
import { roadsFrom } from '../../../support/build-roads.ts';

/** A map that can be changed: nodes by name at metres east and north, ways through them, the drawn order kept. */
export interface District {
  nodes: Record<string, [east: number, north: number]>;
  nodeTags: Record<string, Record<string, string>>;
  ways: { id: number; refs: string[]; tags: Record<string, string> }[];
  restrictions: { from: number; via: string; to: number; tags: Record<string, string> }[];
  /** ids of nodes count from here */
  firstNodeId: number;
  incomplete: string[];
}

const ORIGIN = { lat: 52.67, lon: -0.73 };
const EAST_DEGREE_M = METRES_PER_DEGREE * Math.cos((ORIGIN.lat * Math.PI) / 180);
const END_M = 7000;

/**
 * Seven roads of a kilometre each, one after the other eastwards, ways 1 to 7, nodes every 250 m named by their metres;
 * a side road at each join. The test vehicle meets on it: on way 2 a low height, on 3 a weight limit, on 4 a gate, on 5 a
 * railway bridge without a figure, on 6 hours of closing, on 7 private land.
 */
export function district(): District {
  const nodes: District['nodes'] = {};
  for (let east = 0; east <= END_M; east += 250) nodes[`${east}`] = [east, 0];
  const tags: Record<string, string>[] = [
    { highway: 'secondary', ref: 'B 77', name: 'Long Road' },
    { highway: 'tertiary', name: 'Mill Lane', maxheight: '3.2' },
    { highway: 'tertiary', name: 'Bridge Street', maxweight: '3.2' },
    { highway: 'tertiary', name: 'Cooper Road' },
    { highway: 'tertiary', name: 'Station Road' },
    { highway: 'tertiary', name: 'Market Street', 'motor_vehicle:conditional': 'no @ (Sa 07:00-17:00)' },
    { highway: 'tertiary', name: 'Hall Drive', motor_vehicle: 'private' },
  ];
  const ways = tags.map((own, i) => ({
    id: i + 1,
    refs: [0, 250, 500, 750, 1000].map((east) => `${i * 1000 + east}`),
    tags: { lanes: '2', width: '7', surface: 'asphalt', ...own },
  }));
  for (let join = 1; join < 7; join++) {
    nodes[`side ${join}`] = [join * 1000, 300];
    const own = { highway: 'residential', name: `Side ${join}` };
    ways.push({
      id: 20 + join,
      refs: [`${join * 1000}`, `side ${join}`],
      tags: { ...own, lanes: '2', width: '7', surface: 'asphalt' },
    });
  }
  const map: District = {
    nodes,
    nodeTags: { '3500': { barrier: 'gate' } },
    ways,
    restrictions: [],
    firstNodeId: 1,
    incomplete: [],
  };
  addBridge(map, 4600, 40);
  return map;
}

/** A railway on a bridge over the drive. */
export function addBridge(map: District, east: number, id: number): void {
  map.nodes[`south of ${id}`] = [east, -60];
  map.nodes[`north of ${id}`] = [east + 10, 60];
  map.ways.push({
    id,
    refs: [`south of ${id}`, `north of ${id}`],
    tags: { railway: 'rail', bridge: 'yes', layer: '1' },
  });
}

export function wayOf(map: District, id: number): District['ways'][number] {
  const way = map.ways.find((one) => one.id === id);
  if (way === undefined) throw new Error(`no way ${id}`);
  return way;
}

/** A node on way 1 to 7, set into it where it belongs. */
export function addNode(map: District, east: number, tags: Record<string, string>): void {
  const name = `new ${east}`;
  map.nodes[name] = [east, 0];
  map.nodeTags[name] = tags;
  const { refs } = wayOf(map, Math.floor(east / 1000) + 1);
  const after = refs.findIndex((ref) => map.nodes[ref]![0] > east);
  refs.splice(after, 0, name);
}

/** A way cut at one of its inner nodes: the part after it has a new id and the same tags. */
export function split(map: District, id: number, at: string, newId: number): void {
  const way = wayOf(map, id);
  const cut = way.refs.indexOf(at);
  map.ways.push({ id: newId, refs: way.refs.slice(cut), tags: { ...way.tags } });
  way.refs = way.refs.slice(0, cut + 1);
}

export function roadsOf(map: District): Roads {
  const spare = Array.from({ length: map.firstNodeId - 1 }, (_, i) => [`unused ${i}`, [0, -9000]] as const);
  const all = [...spare, ...Object.entries(map.nodes)];
  const used = new Set(map.ways.flatMap(({ refs }) => refs));
  const nodes = all.filter(([name]) => used.has(name) || name.startsWith('unused'));
  const roads = roadsFrom({
    nodes: Object.fromEntries(
      nodes.map(([name, [east, north]]): [string, [number, number]] => [
        `node ${name}`,
        [ORIGIN.lat + north / METRES_PER_DEGREE, ORIGIN.lon + east / EAST_DEGREE_M],
      ]),
    ),
    nodeTags: Object.fromEntries(Object.entries(map.nodeTags).map(([name, tags]) => [`node ${name}`, tags])),
    ways: map.ways.map(({ id, refs, tags }) => ({ id, refs: refs.map((ref) => `node ${ref}`), tags })),
    restrictions: map.restrictions.map((one) => ({ ...one, via: `node ${one.via}` })),
  });
  return { ...roads, incomplete: map.incomplete };
}

/** The drive along the seven roads, its positions as they were recorded on the first map. */
function drawnDrive(): Route {
  const lon = Float64Array.from({ length: END_M / 50 + 1 }, (_, i) => ORIGIN.lon + (i * 50) / EAST_DEGREE_M);
  const lat = new Float64Array(lon.length).fill(ORIGIN.lat);
  const timeMs = new Float64Array(lon.length).fill(Number.NaN);
  return { name: 'East', kind: 'track', number: 1, segments: [{ lat, lon, timeMs }] };
}

/** The check of the drive on such a map, as the program makes it. */
export function checkOn(roads: Roads, dataDate = '2027-05-01'): DriveReport {
  const route = drawnDrive();
  const dated = { ...roads, sources: [{ name: 'district.osm', sha256: '0', dataDate }] };
  return checkDrive({
    route,
    file: 'east.gpx',
    drive: followRoads(route, dated),
    roads: dated,
    card: COACHBUILT,
    program: 'test',
    made: '2027-06-01T00:00:00Z',
  });
}
