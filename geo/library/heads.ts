/** Parents of each record by its name, as the names of the files tell them. */
export type Parents = ReadonlyMap<string, readonly string[]>;

/** Whether a record can be used, where that has been found out. */
export type Soundness = 'sound' | 'unsound' | 'unread';

export interface Heads {
  /** the newest usable versions, sorted by name: one, or as many as were made without knowing of each other */
  readonly heads: readonly string[];
  /** what must be read before that is known */
  readonly unread: readonly string[];
}

/**
 * The newest versions of one item: those that no usable one comes after. A version that cannot be used hides nothing:
 * the ones before it stand in for it. In which order records arrived makes no difference, and no clock is asked.
 */
export function headsOf(known: Parents, soundnessOf: (name: string) => Soundness): Heads {
  const found = new Set<string>();
  const unread = new Set<string>();
  const seen = new Set<string>();
  const waiting = [...tipsOf(known)];
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    const parents = known.get(name);
    if (parents === undefined || seen.has(name)) continue;
    seen.add(name);
    const soundness = soundnessOf(name);
    if (soundness === 'sound') found.add(name);
    else if (soundness === 'unread') unread.add(name);
    else for (const parent of parents) waiting.push(parent);
  }
  // only names that are not true make one come before itself
  for (const head of [...found])
    for (const name of ancestorsOf([head], known)) if (name !== head) found.delete(name);
  return { heads: [...found].sort(), unread: [...unread].sort() };
}

/** What nobody names as a parent. Where names that cannot be true name each other in a circle, all of those. */
function tipsOf(known: Parents): Set<string> {
  const named = new Set([...known.values()].flat());
  const tips = new Set([...known.keys()].filter((name) => !named.has(name)));
  const reached = ancestorsOf(tips, known);
  for (const name of known.keys()) if (!reached.has(name)) tips.add(name);
  return tips;
}

/** All that came before these. */
export function ancestorsOf(names: Iterable<string>, known: Parents): Set<string> {
  const before = new Set<string>();
  const waiting = [...names].flatMap((name) => known.get(name) ?? []);
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (before.has(name)) continue;
    before.add(name);
    for (const parent of known.get(name) ?? []) waiting.push(parent);
  }
  return before;
}
