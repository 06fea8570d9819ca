import type { DrawnRoute } from '../../../geo/roads/discs.ts';
import type { Pace } from '../fetch/pace.ts';
import type { ShelfTools } from '../shelf/shelf-work.ts';

/** What fetching to the shelf needs of the outside. */
export interface FetchTools extends ShelfTools {
  readonly dataFolder: string;
  readonly pace: Pace;
}

/** A drive whose map is wanted. */
export interface DriveToFetch {
  /** as it is called, for the map's name */
  readonly name: string;
  readonly route: DrawnRoute;
}
