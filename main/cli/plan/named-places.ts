import { fail, ok, type Result } from '../../../geo/result.ts';
import type { NameEntry } from '../../../geo/shelf/names.ts';
import { meantBy, whatItIs } from '../../../geo/shelf/what-it-is.ts';
import { quote } from '../../../geo/units/text.ts';
import type { PlanPlace } from '../../../geo/wayround/plan/plan-input.ts';
import { findNearOnMap, findOnMap } from '../../services/engine/find-places.ts';
import { openMap } from '../../services/map/open-map.ts';
import { findNames, findNear } from '../../services/shelf/find-names.ts';
import { openShelf } from '../../services/shelf/open-shelf.ts';
import { sayNotSearched } from '../../services/shelf/say-lacking.ts';

type Named = NameEntry & { readonly where?: string };

interface LookedUp {
  readonly places: readonly Named[];
  /** which maps names could not all be looked up in */
  readonly notSearched?: string | undefined;
}

/** What looks a name up on the maps at hand. */
interface Names {
  find(text: string): LookedUp;
  near(text: string): readonly string[];
}

/** Places given by name, with what was taken for each: nobody has to guess which of its name was meant. */
export interface PlacesNamed {
  readonly places: readonly PlanPlace[];
  readonly say: readonly string[];
}

const SHOWN = 6;

/**
 * Places given by name, looked up on the maps that are named, else on the shelf. Where one thing alone is called just so,
 * or one town or village, it is taken; of several, or where it only begins one, the choices are told.
 */
export async function placesNamed(
  places: readonly (PlanPlace | string)[],
  { mapPaths, shelf }: { readonly mapPaths: readonly string[]; readonly shelf: string },
): Promise<Result<PlacesNamed>> {
  if (mapPaths.length > 0) {
    const map = await openMap(mapPaths, undefined);
    if (!map.ok) return map;
    return eachPlace(places, {
      find: (text) => ({ places: findOnMap(map.value, text, undefined) }),
      near: (text) => findNearOnMap(map.value, text),
    });
  }
  const open = await openShelf(shelf);
  try {
    return eachPlace(places, {
      find: (text) => {
        const { places: found, damaged } = findNames(open, text, undefined);
        return { places: found, notSearched: sayNotSearched({ damaged, forbidden: open.forbidden }) };
      },
      near: (text) => findNear(open, text),
    });
  } finally {
    open.close();
  }
}

function eachPlace(places: readonly (PlanPlace | string)[], names: Names): Result<PlacesNamed> {
  const read: PlanPlace[] = [];
  const taken: string[] = [];
  const lacking = new Set<string>();
  for (const place of places) {
    if (typeof place !== 'string') {
      read.push(place);
      continue;
    }
    const looked = names.find(place);
    if (looked.notSearched !== undefined) lacking.add(looked.notSearched);
    const one = placeNamed(place, looked, names);
    if (!one.ok) return one;
    const { lat, lon } = one.value;
    read.push({ lat, lon, stop: true });
    taken.push(`${quote(place, 60)} is taken for ${sayNamed(one.value)}.`);
  }
  return ok({ places: read, say: [...lacking, ...taken] });
}

function placeNamed(text: string, { places, notSearched }: LookedUp, names: Names): Result<Named> {
  const meant = meantBy(places, text);
  const [only] = meant;
  if (only !== undefined && meant.length === 1) return ok(only);
  const choices = (meant.length > 1 ? meant : places).slice(0, SHOWN);
  const first = notSearched === undefined ? '' : `${notSearched} `;
  if (choices.length > 0)
    return fail(
      'usage',
      `${first}--at ${quote(text, 60)} may be several: ${choices.map(sayNamed).join('; ')}. Give the figures of the one that is meant.`,
    );
  const near = names.near(text);
  const like = near.length === 0 ? '' : ` Did you mean ${near.map((name) => quote(name, 60)).join(' or ')}?`;
  const which = notSearched === undefined ? 'on the map' : 'that can be read';
  return fail(
    'usage',
    `${first}--at ${quote(text, 60)}: no place or road ${which} is called so.${like} Type another name, or latitude and longitude: 51.5074,-0.1278.`,
  );
}

function sayNamed({ name, kind, what, where, lat, lon }: Named): string {
  const told = [whatItIs({ kind, what }), ...(where === undefined ? [] : [where])].join(', ');
  return `${quote(name, 60)} (${told}): ${lat.toFixed(5)},${lon.toFixed(5)}`;
}
