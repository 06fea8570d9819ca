import { join } from 'node:path';
import type { Box } from '../../../geo/roads/box.ts';
import type { PartMeta } from '../../../geo/shelf/part-meta.ts';
import { openPartOrNot } from './open-shelf.ts';
import { type FoundMap, findMaps } from './shelf-folder.ts';

/** Of one place are maps that share this much of the smaller one's area; a judgement. */
const SAME_PLACE_SHARE = 0.5;
/** So that a single straight road has an area, degrees. */
const AIR_DEG = 0.01;

/**
 * The name that a new map gets. A map of another place is no newer state of the one of its name: it stands beside that
 * one, which would be lost otherwise.
 * @param metas of the new map's parts
 * @param names in the order wanted; after them the first is counted up
 */
export async function nameOfNew(
  shelf: string,
  metas: readonly Pick<PartMeta, 'box'>[],
  names: readonly [string, ...string[]],
): Promise<string> {
  const there = new Map((await findMaps(shelf)).map((map) => [map.name, map]));
  const box = around(metas);
  const mayTake = (name: string) => {
    const old = there.get(name);
    return old === undefined || liesThereToo(boxOf(old), box);
  };
  for (const name of names) if (mayTake(name)) return name;
  for (let number = 2; ; number++) {
    const name = `${names[0]} ${number}`;
    if (mayTake(name)) return name;
  }
}

/** Undefined where it has no road, or none that can be read: nothing is lost with it. */
function boxOf({ folder, manifest }: FoundMap): Box | undefined {
  const parts = (manifest?.parts ?? []).map(({ file }) => openPartOrNot(join(folder, file)));
  for (const part of parts) part?.close();
  return around(parts.flatMap((part) => part?.meta ?? []));
}

function around(metas: readonly Pick<PartMeta, 'box'>[]): Box | undefined {
  let all: Box | undefined;
  for (const { box } of metas) {
    if (box === null) continue;
    all = {
      south: Math.min(all?.south ?? 90, box.south - AIR_DEG),
      west: Math.min(all?.west ?? 180, box.west - AIR_DEG),
      north: Math.max(all?.north ?? -90, box.north + AIR_DEG),
      east: Math.max(all?.east ?? -180, box.east + AIR_DEG),
    };
  }
  return all;
}

function liesThereToo(old: Box | undefined, box: Box | undefined): boolean {
  if (old === undefined) return true;
  if (box === undefined) return false;
  const shared = areaOf({
    south: Math.max(old.south, box.south),
    west: Math.max(old.west, box.west),
    north: Math.min(old.north, box.north),
    east: Math.min(old.east, box.east),
  });
  return shared >= SAME_PLACE_SHARE * Math.min(areaOf(old), areaOf(box));
}

/** In square degrees: only shares are compared. */
function areaOf({ south, west, north, east }: Box): number {
  return Math.max(0, north - south) * Math.max(0, east - west);
}
