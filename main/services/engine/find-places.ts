import { distanceM, type Place } from '../../../geo/earth/sphere.ts';
import { given } from '../../../geo/given.ts';
import { type Roads, WAY_KIND } from '../../../geo/roads/roads.ts';
import { foldName, type NameEntry } from '../../../geo/shelf/names.ts';
import { nearNames } from '../../../geo/shelf/near-names.ts';
import { type Landmark, landmarkOf, toldApart, whereItIs } from '../../../geo/shelf/where-it-is.ts';

/** So many names are told of one question. */
const FOUND_MOST = 12;
/** A road's pieces this near one another are one road. */
const SAME_WITHIN_M = 3_000;

/** A name found on an open map file, and where it lies: how far from which settlement. */
export interface NameOnMap extends NameEntry {
  readonly where?: string;
}

/** Names of an open map file that begin with a text: places before roads, what is near before what is far. */
export function findOnMap({ nodes, ways }: Roads, text: string, near: Place | undefined): NameOnMap[] {
  const wanted = foldName(text);
  if (wanted === '') return [];
  const found: NameEntry[] = [];
  const add = (entry: NameEntry) => {
    if (!foldName(entry.name).startsWith(wanted)) return;
    const known = found.some(
      ({ kind, name, lat, lon }) =>
        kind === entry.kind &&
        name === entry.name &&
        distanceM(lat, lon, entry.lat, entry.lon) < SAME_WITHIN_M,
    );
    if (!known) found.push(entry);
  };
  const landmarks = [...landmarksOn(nodes)];
  for (const [node, { name, place }] of nodes.tags)
    if (name !== undefined && place !== undefined)
      add({ name, kind: 'place', what: place, lat: nodes.lat[node]!, lon: nodes.lon[node]! });
  for (let way = 0; way < ways.count; way++) {
    const { name, ref, highway } = ways.tags[way] ?? {};
    const said = name ?? ref;
    if (ways.kind[way] !== WAY_KIND.road || said === undefined || highway === undefined) continue;
    const middle = ways.refs[(ways.start[way]! + ways.start[way + 1]!) >> 1]!;
    add({ name: said, kind: 'road', what: highway, lat: nodes.lat[middle]!, lon: nodes.lon[middle]! });
  }
  const awayM = ({ lat, lon }: NameEntry) =>
    near === undefined ? 0 : distanceM(near.lat, near.lon, lat, lon);
  const rank = ({ name, kind }: NameEntry) =>
    (foldName(name) === wanted ? 0 : 2) + (kind === 'place' ? 0 : 1);
  const places = found
    .sort((a, b) => rank(a) - rank(b) || awayM(a) - awayM(b))
    .slice(0, FOUND_MOST)
    .map((entry) => ({ ...entry, ...given({ where: whereItIs(entry, landmarks) }) }));
  return toldApart(places);
}

function* landmarksOn({ tags, lat, lon }: Roads['nodes']): Iterable<Landmark> {
  for (const [node, each] of tags) {
    const landmark = landmarkOf(each, { lat: lat[node]!, lon: lon[node]! });
    if (landmark !== undefined) yield landmark;
  }
}

/** Names of an open map file that a misspelt one was likely meant to be. */
export function findNearOnMap({ nodes, ways }: Roads, text: string): string[] {
  const names = new Set<string>();
  for (const { name, place } of nodes.tags.values())
    if (name !== undefined && place !== undefined) names.add(name);
  for (let way = 0; way < ways.count; way++) {
    const { name } = ways.tags[way] ?? {};
    if (ways.kind[way] === WAY_KIND.road && name !== undefined) names.add(name);
  }
  return nearNames(text, names);
}
