import { join } from 'node:path';
import { given } from '../../../geo/given.ts';
import type { Directory } from '../../../geo/shelf/directory.ts';
import { LAYER, LAYER_ZOOM } from '../../../geo/shelf/layers.ts';
import { isMainOnly } from '../../../geo/shelf/part-meta.ts';
import { tileOf } from '../../../geo/shelf/tiles.ts';
import type { ShelfMap } from '../../contract/shelf.ts';
import { listMap } from './list-maps.ts';
import { openPartOrNot } from './open-shelf.ts';
import { type FoundMap, findMaps } from './shelf-folder.ts';
import { sourcesThere } from './sources-there.ts';

/** All maps of the shelf, with what is drawn and said of them in the window. @throws what the system says */
export async function showMaps(shelf: string): Promise<ShelfMap[]> {
  return Promise.all((await findMaps(shelf)).map(showMap));
}

async function showMap(map: FoundMap): Promise<ShelfMap> {
  const listed = await listMap(map);
  const parts = (map.manifest?.parts ?? []).flatMap(
    ({ file }) => openPartOrNot(join(map.folder, file)) ?? [],
  );
  for (const part of parts) part.close();
  const { around, ...plain } = listed;
  const mend = listed.state === 'damaged' && map.manifest ? await sourcesThere(map.manifest) : undefined;
  return {
    ...plain,
    ...given({ around: around && [...around], mendFrom: mend?.from }),
    sources: listed.sources.map((source) => ({ ...source })),
    origin: map.manifest?.origin.by ?? 'unknown',
    mainRoadsOnly: parts.length > 0 && parts.every(({ meta }) => isMainOnly(meta)),
    area: areaOf(parts.map(({ directory }) => directory)),
  };
}

/** So many squares can be told apart in a small drawing. */
const SQUARES_MOST = 400;

/** Where roads are: the tiles that hold some, brought to a zoom at which there are few enough to draw. */
function areaOf(directories: readonly Directory[]): ShelfMap['area'] {
  let { wide: zoom } = LAYER_ZOOM;
  let tiles = new Set<number>();
  for (const { count, layer, tile } of directories)
    for (let i = 0; i < count; i++) if (layer[i] === LAYER.wide) tiles.add(tile[i]!);
  // four neighbours along the curve are one tile of the next coarser zoom
  for (; tiles.size > SQUARES_MOST && zoom > 0; zoom--)
    tiles = new Set([...tiles].map((number) => Math.floor(number / 4)));
  return {
    zoom,
    tiles: [...tiles].map((number) => {
      const { x, y } = tileOf(number, zoom);
      return [x, y];
    }),
  };
}
