import { given } from '../../../../geo/given.ts';
import { fail, ok, type Result } from '../../../../geo/result.ts';
import type { NameEntry } from '../../../../geo/shelf/names.ts';
import { meantBy, whatItIs } from '../../../../geo/shelf/what-it-is.ts';
import { findNames, findNear } from '../../shelf/find-names.ts';
import { type OpenShelf, openShelf } from '../../shelf/open-shelf.ts';
import { sayNotSearched } from '../../shelf/say-lacking.ts';
import { shelfUnreadable } from '../../shelf/shelf-unreadable.ts';
import { findNearOnMap, findOnMap } from '../find-places.ts';
import type { EngineCalls } from '../protocol.ts';
import type { EngineState } from '../state.ts';

type Asked = EngineCalls['findPlaces']['request'];
type Found = EngineCalls['findPlaces']['value'];

const NO_MAP = fail('no-map', 'No map is open. Open a map first.');

/** Names on the open map; where that is a file and has none, on the shelf. */
export async function findPlaces({ map, shelf }: EngineState, asked: Asked): Promise<Result<Found>> {
  if (!map) return NO_MAP;
  if (shelf) return ok(onShelf(shelf, asked));
  const places = findOnMap(map, asked.text, asked.near);
  if (places.length > 0) return ok(told(places, asked));
  const there = asked.shelf === undefined ? undefined : await onShelfIn(asked.shelf, asked);
  if (there?.ok === false || (there && there.value.places.length > 0)) return there;
  return ok({
    ...told([], asked),
    ...given({ notSearched: there?.value.notSearched }),
    meant: [...findNearOnMap(map, asked.text), ...(there?.value.meant ?? [])].slice(0, MEANT_MOST),
  });
}

const MEANT_MOST = 3;

async function onShelfIn(folder: string, asked: Asked): Promise<Result<Found>> {
  try {
    const shelf = await openShelf(folder);
    try {
      return ok(onShelf(shelf, asked));
    } finally {
      shelf.close();
    }
  } catch (error) {
    return shelfUnreadable(folder, error);
  }
}

function onShelf(shelf: OpenShelf, asked: Asked): Found {
  const { places, damaged } = findNames(shelf, asked.text, asked.near);
  const notSearched = sayNotSearched({ damaged, forbidden: shelf.forbidden });
  const found = { ...told(places, asked), ...given({ notSearched }) };
  return places.length > 0 ? found : { ...found, meant: findNear(shelf, asked.text) };
}

function told(places: readonly (NameEntry & { readonly where?: string })[], { text }: Asked): Found {
  return {
    places: places.map((each) => ({ ...each, what: whatItIs(each) })),
    exact: meantBy(places, text).length,
  };
}
