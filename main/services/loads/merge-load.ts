import { isDeepStrictEqual } from 'node:util';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';

type Items = readonly LoadItem[];

export interface MergedLoad {
  /** what is kept */
  readonly items: Items;
  /** what another window had made of the same list, to be kept aside */
  readonly other?: Items;
  /** the list was to be emptied and stays, since another window has changed it */
  readonly stays?: true;
}

/** One vehicle's list changed here brought together with the same list changed in another window. */
export function mergeLoad({
  known,
  mine,
  theirs,
}: {
  readonly known: Items;
  readonly mine: Items;
  readonly theirs: Items;
}): MergedLoad {
  if (isDeepStrictEqual(theirs, known) || isDeepStrictEqual(theirs, mine)) return { items: mine };
  if (isDeepStrictEqual(mine, known)) return { items: theirs };
  if (mine.length === 0) return { items: theirs, stays: true };
  return theirs.length === 0 ? { items: mine } : { items: mine, other: theirs };
}
