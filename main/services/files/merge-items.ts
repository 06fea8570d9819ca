import { isDeepStrictEqual } from 'node:util';

/** What one was working on, what one made of it, and what lies there now. */
export interface ThreeVersions<T> {
  readonly known: readonly T[];
  readonly mine: readonly T[];
  readonly theirs: readonly T[];
}

/** An item that both have changed, each in another way; undefined where one has deleted it. */
export interface Collision<T> {
  readonly id: string;
  readonly mine: T | undefined;
  readonly theirs: T | undefined;
}

export interface Merged<T> {
  /** in my order, what is only theirs last; of what collides mine, theirs where I deleted it */
  readonly items: readonly T[];
  readonly collisions: readonly Collision<T>[];
  /** what they changed and I did not: as they left it, and as it was known */
  readonly taken: readonly { readonly now: T | undefined; readonly was: T | undefined }[];
}

/** Brings two changes of one list together, item by item: nothing that either has added or changed is lost. */
export function mergeItems<T>(versions: ThreeVersions<T>, idOf: (item: T) => string): Merged<T> {
  const byId = (list: readonly T[]) => new Map(list.map((item) => [idOf(item), item]));
  const [known, mine, theirs] = [versions.known, versions.mine, versions.theirs].map(byId) as [
    Map<string, T>,
    Map<string, T>,
    Map<string, T>,
  ];
  const items: T[] = [];
  const collisions: Collision<T>[] = [];
  const taken: { now: T | undefined; was: T | undefined }[] = [];
  for (const id of new Set([...mine.keys(), ...theirs.keys()])) {
    const [was, here, there] = [known.get(id), mine.get(id), theirs.get(id)];
    const onlyTheirs = isDeepStrictEqual(here, was) && !isDeepStrictEqual(there, was);
    const collide =
      !isDeepStrictEqual(here, was) && !isDeepStrictEqual(there, was) && !isDeepStrictEqual(here, there);
    if (onlyTheirs) taken.push({ now: there, was });
    if (collide) collisions.push({ id, mine: here, theirs: there });
    const left = onlyTheirs ? there : (here ?? (collide ? there : undefined));
    if (left !== undefined) items.push(left);
  }
  return { items, collisions, taken };
}
