/** The members that are there for certain as they are, the others optional: what may be undefined may be missing. */
type Given<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** The members that have a value; those that are undefined are left out, so that `in` and JSON do not see them. */
export function given<T extends object>(members: T): Given<T>;
export function given<T extends object>(members: T): Partial<T> {
  const kept: Partial<T> = {};
  for (const name in members) if (members[name] !== undefined) kept[name] = members[name];
  return kept;
}
