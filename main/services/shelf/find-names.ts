import { distanceM, type Place } from '../../../geo/earth/sphere.ts';
import { given } from '../../../geo/given.ts';
import { Refusal } from '../../../geo/roads/refusal.ts';
import { findBlock } from '../../../geo/shelf/directory.ts';
import { LAYER, LAYER_ZOOM } from '../../../geo/shelf/layers.ts';
import { decodeNameKeys, decodeNames, foldName, type NameEntry } from '../../../geo/shelf/names.ts';
import { nearNames } from '../../../geo/shelf/near-names.ts';
import { decodeTags } from '../../../geo/shelf/tag-bytes.ts';
import { numbersIn, rangeOfBox } from '../../../geo/shelf/tiles.ts';
import {
  type Landmark,
  landmarkOf,
  settlementRank,
  toldApart,
  whereItIs,
} from '../../../geo/shelf/where-it-is.ts';
import { codeOf } from '../files/system-error.ts';
import type { OpenShelf } from './open-shelf.ts';
import type { OpenPart } from './read-part.ts';

/** A name found, and where it lies: how far from which settlement. */
export interface NameFound extends NameEntry {
  readonly where?: string;
}

/** What looking a name up came to. */
export interface NamesFound {
  readonly places: readonly NameFound[];
  /** names of maps of which not all that could hold such a name could be read */
  readonly damaged: readonly string[];
}

/** Blocks read of one part for one question: some two thousand names. */
const BLOCKS_MOST = 4;
const FOUND_MOST = 12;
/** The same name this near, of another map or another piece of the road, is the same thing. */
const SAME_WITHIN_M = 2_000;

/**
 * Names on the shelf that begin with a text, whatever its case and accents: the whole name first, then places before
 * sites and roads, and what is near before what is far.
 */
export function findNames(shelf: OpenShelf, text: string, near: Place | undefined): NamesFound {
  const wanted = foldName(text);
  if (wanted === '') return { places: [], damaged: [] };
  const found: NameEntry[] = [];
  const damaged = new Set(shelf.damaged);
  for (const { map, part } of shelf.parts)
    for (const entry of namesIn(part, wanted, { onLost: () => damaged.add(map) }))
      if (!found.some((other) => isSame(other, entry))) found.push(entry);
  const awayM = ({ lat, lon }: NameEntry) =>
    near === undefined ? 0 : distanceM(near.lat, near.lon, lat, lon);
  const rank = (entry: NameEntry) =>
    (foldName(entry.name) === wanted ? 0 : 10) +
    KIND_RANK[entry.kind] +
    (settlementRank(entry.what) ?? 9) / 10;
  const places = found
    .sort((a, b) => rank(a) - rank(b) || awayM(a) - awayM(b))
    .slice(0, FOUND_MOST)
    .map((entry) => ({ ...entry, ...given({ where: whereItIs(entry, landmarksAbout(shelf, entry)) }) }));
  return { places: toldApart(places), damaged: [...damaged] };
}

/** Blocks read of one part for near names: some hundred thousand names. */
const NEAR_BLOCKS_MOST = 200;

/** Names on the shelf that a misspelt one was likely meant to be: of those with its first letter. */
export function findNear(shelf: OpenShelf, text: string): string[] {
  const first = foldName(text).slice(0, 1);
  if (first === '') return [];
  const names = shelf.parts.flatMap(({ part }) =>
    namesIn(part, first, { most: NEAR_BLOCKS_MOST }).map(({ name }) => name),
  );
  return nearNames(text, names);
}

const KIND_RANK = { place: 0, site: 1, road: 2 } as const;
function isSame(a: NameEntry, b: NameEntry): boolean {
  return a.kind === b.kind && a.name === b.name && distanceM(a.lat, a.lon, b.lat, b.lon) < SAME_WITHIN_M;
}

interface HowRead {
  /** blocks */
  readonly most?: number;
  /** hears that something of the index could not be read: it is passed over */
  onLost?(): void;
}

function namesIn(
  part: OpenPart,
  wanted: string,
  { most = BLOCKS_MOST, onLost = () => {} }: HowRead,
): NameEntry[] {
  const read = <T>(decode: (bytes: Uint8Array) => T[], layer: number, number: number): T[] => {
    const entries = attempt(() => decode(part.block(placeOfBlock(part, layer, number))));
    if (entries === undefined) onLost();
    return entries ?? [];
  };
  // a map without a name in it has no index
  if (findBlock(part.directory, LAYER.nameKeys, 0) < 0) return [];
  const keys = read(decodeNameKeys, LAYER.nameKeys, 0);
  const after = keys.findIndex((key) => key > wanted && !key.startsWith(wanted));
  const end = after < 0 ? keys.length : after;
  const first = keys.findIndex(
    (key, i) => key <= wanted && (keys[i + 1] === undefined || keys[i + 1]! >= wanted),
  );
  const found: NameEntry[] = [];
  for (let block = Math.max(0, first); block < Math.min(end, Math.max(0, first) + most); block++)
    for (const entry of read(decodeNames, LAYER.names, block))
      if (foldName(entry.name).startsWith(wanted)) found.push(entry);
  return found;
}

function placeOfBlock(part: OpenPart, layer: number, number: number): number {
  const place = findBlock(part.directory, layer, number);
  if (place < 0) throw new Refusal('shelf.damaged', 'a part of the name index is missing');
  return place;
}

function* landmarksAbout(shelf: OpenShelf, { lat, lon }: Place): Iterable<Landmark> {
  const box = { south: lat - 0.05, north: lat + 0.05, west: lon - 0.08, east: lon + 0.08 };
  for (const { part } of shelf.parts)
    for (const tile of numbersIn(rangeOfBox(box, LAYER_ZOOM.wide), LAYER_ZOOM.wide)) {
      const block = attempt(() => part.tile('wide', tile));
      if (block === undefined) continue;
      const { node, set } = block.nodes.tagged;
      for (let i = 0; i < node.length; i++) {
        const at = { lat: block.nodes.lat[node[i]!]!, lon: block.nodes.lon[node[i]!]! };
        const landmark = landmarkOf(decodeTags(block.sets.at(set[i]!)!), at);
        if (landmark !== undefined) yield landmark;
      }
    }
}

function attempt<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (thrown) {
    if (thrown instanceof Refusal || codeOf(thrown) !== undefined) return undefined;
    throw thrown;
  }
}
