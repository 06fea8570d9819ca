import type { Route } from '../../../geo/drive/gpx/route.ts';
import { given } from '../../../geo/given.ts';
import { largest, smallest } from '../../../geo/lists.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import type { Roads } from '../../../geo/roads/roads.ts';
import { coverageOf } from '../../../geo/shelf/coverage.ts';
import { isMainOnly, type PartMeta } from '../../../geo/shelf/part-meta.ts';
import { counted } from '../../../geo/units/text.ts';
import type { MapSummary } from '../../contract/map-summary.ts';
import { noteDamage } from '../shelf/found-damaged.ts';
import { type OpenShelf, openShelf } from '../shelf/open-shelf.ts';
import { type Pause, roadsFromShelf } from '../shelf/roads-from-shelf.ts';
import { shelfUnreadable } from '../shelf/shelf-unreadable.ts';
import { sumUpMap } from './sum-up-map.ts';

/** The shelf, open, with what it knows along a drive. */
export interface ShelfOpened {
  readonly shelf: OpenShelf;
  readonly roads: Roads;
  readonly summary: MapSummary;
}

const NOWHERE = { segments: [] };

/** Opens the shelf about a drive, or about nothing: then its maps can be drawn, and no drive followed. */
export async function openShelfFor(
  folder: string,
  route: Route | undefined,
  pause: Pause,
): Promise<Result<ShelfOpened>> {
  let shelf: OpenShelf;
  try {
    shelf = await openShelf(folder);
  } catch (error) {
    return shelfUnreadable(folder, error);
  }
  if (shelf.parts.length === 0) {
    shelf.close();
    return shelf.maps === 0
      ? fail(
          'shelf.empty',
          'Nothing is on the shelf yet: no map of yours is kept there. Import one, or fetch the map of a drive.',
        )
      : fail('shelf.damaged', 'No map on the shelf can be read. Mend them, or import them again.');
  }
  const { roads, used, damaged } = await roadsFromShelf(shelf, route ?? NOWHERE, pause);
  // the list of the shelf shows it from now on
  for (const { map, of } of shelf.parts)
    if (of && damaged.includes(map)) await noteDamage(of.folder, of.generation);
  const maps = [
    ...new Set(route === undefined ? shelf.parts.map(({ map }) => map) : used.map(({ map }) => map)),
  ];
  const coverage = route === undefined ? { lengthM: 0, bare: [] } : coverageOf(route, roads);
  const summary = sumUpMap(roads, nameOf(maps));
  // the whole of the maps used, not what lies about the drive alone: all of it can be looked at
  const bounds = boundsOf(
    route === undefined ? shelf.parts.map(({ part }) => part.meta) : used.map(({ meta }) => meta),
  );
  return ok({
    shelf,
    roads,
    summary: {
      ...summary,
      bounds,
      center: bounds && { lat: (bounds.south + bounds.north) / 2, lon: (bounds.west + bounds.east) / 2 },
      shelf: {
        maps,
        lengthM: coverage.lengthM,
        bare: [...coverage.bare],
        mainRoadsOnly: used.length > 0 && used.every(({ meta }) => isMainOnly(meta)),
        damaged: [...damaged],
        ...given({ lookAt: route === undefined && maps.length > 1 ? aroundLargest(shelf) : undefined }),
      },
    },
  });
}

function nameOf(maps: readonly string[]): string {
  const [first, ...others] = maps;
  if (first === undefined) return 'Shelf';
  return others.length === 0 ? first : `${first} and ${counted(others.length, 'other map')}`;
}

/** Around the map with most roads: maps that lie far apart show nothing where all of them are looked at. */
function aroundLargest({ parts }: OpenShelf): NonNullable<MapSummary['bounds']> | undefined {
  const roadsOf = new Map<string, number>();
  for (const { map, part } of parts) roadsOf.set(map, (roadsOf.get(map) ?? 0) + part.meta.roads);
  const [most] = [...roadsOf].sort(([, a], [, b]) => b - a);
  return boundsOf(parts.filter(({ map }) => map === most?.[0]).map(({ part }) => part.meta)) ?? undefined;
}

/** Around all parts. One that crosses the antimeridian makes it the whole way round. */
function boundsOf(metas: readonly PartMeta[]): MapSummary['bounds'] {
  const boxes = metas.flatMap(({ box }) => box ?? []);
  if (boxes.length === 0) return null;
  return {
    south: smallest(boxes.map(({ south }) => south)),
    west: smallest(boxes.map(({ west }) => west)),
    north: largest(boxes.map(({ north }) => north)),
    east: largest(boxes.map(({ east }) => east)),
  };
}
