import { fail, ok, type Result } from '../../../geo/result.ts';
import type { NameEntry } from '../../../geo/shelf/names.ts';
import { exactlyNamed, whatItIs } from '../../../geo/shelf/what-it-is.ts';
import { quote } from '../../../geo/units/text.ts';
import type { PlanPlace } from '../../../geo/wayround/plan/plan-input.ts';
import { findNearOnMap, findOnMap } from '../../services/engine/find-places.ts';
import { openMap } from '../../services/map/open-map.ts';
import { findNames, findNear } from '../../services/shelf/find-names.ts';
import { openShelf } from '../../services/shelf/open-shelf.ts';

/** What looks a name up on the maps at hand. */
interface Names {
  find(text: string): readonly NameEntry[];
  near(text: string): readonly string[];
}

const SHOWN = 6;

/**
 * Places given by name, looked up on the maps that are named, else on the shelf. Where one thing alone is called just so
 * it is taken; of several, or where it only begins one, the choices are told.
 */
export async function placesNamed(
  places: readonly (PlanPlace | string)[],
  { mapPaths, shelf }: { readonly mapPaths: readonly string[]; readonly shelf: string },
): Promise<Result<PlanPlace[]>> {
  if (mapPaths.length > 0) {
    const map = await openMap(mapPaths, undefined);
    if (!map.ok) return map;
    return eachPlace(places, {
      find: (text) => findOnMap(map.value, text, undefined),
      near: (text) => findNearOnMap(map.value, text),
    });
  }
  const open = await openShelf(shelf);
  try {
    return eachPlace(places, {
      find: (text) => findNames(open, text, undefined),
      near: (text) => findNear(open, text),
    });
  } finally {
    open.close();
  }
}

function eachPlace(places: readonly (PlanPlace | string)[], names: Names): Result<PlanPlace[]> {
  const read: PlanPlace[] = [];
  for (const place of places) {
    const one = typeof place === 'string' ? placeNamed(place, names) : ok(place);
    if (!one.ok) return one;
    read.push(one.value);
  }
  return ok(read);
}

function placeNamed(text: string, names: Names): Result<PlanPlace> {
  const found = names.find(text);
  const exact = exactlyNamed(found, text);
  const [only] = exact;
  if (only !== undefined && exact.length === 1) return ok({ lat: only.lat, lon: only.lon, stop: true });
  const choices = (exact.length > 1 ? exact : found).slice(0, SHOWN);
  if (choices.length > 0) {
    const told = choices.map(
      ({ lat, lon, ...each }) =>
        `${quote(each.name, 60)} (${whatItIs(each)}): ${lat.toFixed(5)},${lon.toFixed(5)}`,
    );
    return fail(
      'usage',
      `--at ${quote(text, 60)} may be several: ${told.join('; ')}. Give the figures of the one that is meant.`,
    );
  }
  const near = names.near(text);
  const meant = near.length === 0 ? '' : ` Did you mean ${near.map((name) => quote(name, 60)).join(' or ')}?`;
  return fail(
    'usage',
    `--at ${quote(text, 60)}: no place or road on the map is called so.${meant} Type another name, or latitude and longitude: 51.5074,-0.1278.`,
  );
}
