import type { Item } from '../../../geo/library/item.ts';
import type { Body } from '../../../geo/library/record.ts';
import { type ChosenKind, versionsApart } from '../../../geo/library/versions-apart.ts';

/** One of several versions, as `--json` tells it. */
interface ToldVersion {
  readonly version: string;
  readonly name: string;
  readonly made: string;
  /** in what it differs from the others */
  readonly says: readonly string[];
}

/** The versions of a thing that was changed on two computers at once, or removed on one of them; nothing where there is one. */
export function toldVersions<K extends ChosenKind>(
  { kind, versions, deleted }: Item<K>,
  nameOf: (body: Body<K>) => string,
): { readonly versions?: readonly ToldVersion[]; readonly removed?: string } {
  if (versions.length < 2 && deleted === undefined) return {};
  const bodies = versions.map(({ body }) => body);
  const says = versionsApart(kind, bodies, 'both');
  return {
    versions: versions.map(({ name, made, body }, i) => ({
      version: name,
      name: nameOf(body),
      made,
      says: (versions.length > 1 && says[i]) || [],
    })),
    ...(deleted !== undefined && { removed: deleted }),
  };
}
