import type { Item } from '../../../geo/library/item.ts';
import type { Body, Kind } from '../../../geo/library/record.ts';

/** One of several versions, as `--json` tells it. */
interface ToldVersion {
  readonly version: string;
  readonly name: string;
  readonly made: string;
}

/** The versions of a thing that was changed on two computers at once; nothing where there is one. */
export function toldVersions<K extends Kind>(
  { versions }: Item<K>,
  nameOf: (body: Body<K>) => string,
): { readonly versions?: readonly ToldVersion[] } {
  if (versions.length < 2) return {};
  return { versions: versions.map(({ name, made, body }) => ({ version: name, name: nameOf(body), made })) };
}
