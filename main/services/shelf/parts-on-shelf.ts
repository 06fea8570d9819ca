import type { PartMeta } from '../../../geo/shelf/part-meta.ts';
import { openShelf } from './open-shelf.ts';

/** What there is to know of each map on the shelf, without reading a road. */
export async function partsOnShelf(folder: string): Promise<PartMeta[]> {
  const shelf = await openShelf(folder);
  const parts = shelf.parts.map(({ part }) => part.meta);
  shelf.close();
  return parts;
}
