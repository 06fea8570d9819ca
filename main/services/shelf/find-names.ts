import { distanceM, type Place } from '../../../geo/earth/sphere.ts';
import { Refusal } from '../../../geo/roads/refusal.ts';
import { findBlock } from '../../../geo/shelf/directory.ts';
import { LAYER, LAYER_ZOOM } from '../../../geo/shelf/layers.ts';
import { decodeNameKeys, decodeNames, foldName, type NameEntry } from '../../../geo/shelf/names.ts';
import { nearNames } from '../../../geo/shelf/near-names.ts';
import { decodeTags } from '../../../geo/shelf/tag-bytes.ts';
import { numbersIn, rangeOfBox } from '../../../geo/shelf/tiles.ts';
import { codeOf } from '../files/system-error.ts';
import type { OpenShelf } from './open-shelf.ts';
import type { OpenPart } from './read-part.ts';

/** A name found, and the place it lies in or by. */
export interface NameFound extends NameEntry {
  readonly in?: string;
}

/** Blocks read of one part for one question: some two thousand names. */
const BLOCKS_MOST = 4;
const FOUND_MOST = 12;
/** The same name this near, of another map or another piece of the road, is the same thing. */
const SAME_WITHIN_M = 2_000;
/** A place this far off is not where something is. */
const IN_WITHIN_M = 15_000;

/**
 * Names on the shelf that begin with a text, whatever its case and accents: the whole name first, then places before
 * sites and roads, and what is near before what is far.
 */
export function findNames(shelf: OpenShelf, text: string, near: Place | undefined): NameFound[] {
  const wanted = foldName(text);
  if (wanted === '') return [];
  const found: NameEntry[] = [];
  for (const { part } of shelf.parts)
    for (const entry of namesIn(part, wanted))
      if (!found.some((other) => isSame(other, entry))) found.push(entry);
  const awayM = ({ lat, lon }: NameEntry) =>
    near === undefined ? 0 : distanceM(near.lat, near.lon, lat, lon);
  const rank = (entry: NameEntry) =>
    (foldName(entry.name) === wanted ? 0 : 10) + KIND_RANK[entry.kind] + (PLACE_RANK[entry.what] ?? 0.9);
  return found
    .sort((a, b) => rank(a) - rank(b) || awayM(a) - awayM(b))
    .slice(0, FOUND_MOST)
    .map((entry) => ({ ...entry, ...placeOf(shelf, entry) }));
}

/** Blocks read of one part for near names: some hundred thousand names. */
const NEAR_BLOCKS_MOST = 200;

/** Names on the shelf that a misspelt one was likely meant to be: of those with its first letter. */
export function findNear(shelf: OpenShelf, text: string): string[] {
  const first = foldName(text).slice(0, 1);
  if (first === '') return [];
  const names = shelf.parts.flatMap(({ part }) =>
    namesIn(part, first, NEAR_BLOCKS_MOST).map(({ name }) => name),
  );
  return nearNames(text, names);
}

const KIND_RANK = { place: 0, site: 1, road: 2 } as const;
const PLACE_RANK: Readonly<Record<string, number>> = {
  city: 0,
  town: 0.1,
  village: 0.2,
  suburb: 0.3,
  hamlet: 0.4,
};

function isSame(a: NameEntry, b: NameEntry): boolean {
  return a.kind === b.kind && a.name === b.name && distanceM(a.lat, a.lon, b.lat, b.lon) < SAME_WITHIN_M;
}

/** Damaged blocks of the index are passed over: reading all of the map tells of them. */
function namesIn(part: OpenPart, wanted: string, most = BLOCKS_MOST): NameEntry[] {
  const keys = attempt(() => decodeNameKeys(part.block(placeOfBlock(part, LAYER.nameKeys, 0)))) ?? [];
  const after = keys.findIndex((key) => key > wanted && !key.startsWith(wanted));
  const end = after < 0 ? keys.length : after;
  const first = keys.findIndex(
    (key, i) => key <= wanted && (keys[i + 1] === undefined || keys[i + 1]! >= wanted),
  );
  const found: NameEntry[] = [];
  for (let block = Math.max(0, first); block < Math.min(end, Math.max(0, first) + most); block++)
    for (const entry of attempt(() => decodeNames(part.block(placeOfBlock(part, LAYER.names, block)))) ?? [])
      if (foldName(entry.name).startsWith(wanted)) found.push(entry);
  return found;
}

function placeOfBlock(part: OpenPart, layer: number, number: number): number {
  const place = findBlock(part.directory, layer, number);
  if (place < 0) throw new Refusal('shelf.damaged', 'a part of the name index is missing');
  return place;
}

/** The nearest town or village of those around, with its name. */
function placeOf(shelf: OpenShelf, { kind, lat, lon }: NameEntry): { in?: string } {
  if (kind === 'place') return {};
  const box = { south: lat - 0.05, north: lat + 0.05, west: lon - 0.08, east: lon + 0.08 };
  let nearest: { name: string; awayM: number } | undefined;
  for (const { part } of shelf.parts)
    for (const tile of numbersIn(rangeOfBox(box, LAYER_ZOOM.wide), LAYER_ZOOM.wide)) {
      const block = attempt(() => part.tile('wide', tile));
      if (block === undefined) continue;
      const { node, set } = block.nodes.tagged;
      for (let i = 0; i < node.length; i++) {
        const { place, name } = decodeTags(block.sets.at(set[i]!)!);
        if (place === undefined || name === undefined || PLACE_RANK[place] === undefined) continue;
        const awayM = distanceM(lat, lon, block.nodes.lat[node[i]!]!, block.nodes.lon[node[i]!]!);
        if (awayM < (nearest?.awayM ?? IN_WITHIN_M)) nearest = { name, awayM };
      }
    }
  return nearest === undefined ? {} : { in: nearest.name };
}

function attempt<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch (thrown) {
    if (thrown instanceof Refusal || codeOf(thrown) !== undefined) return undefined;
    throw thrown;
  }
}
