interface Named {
  readonly id: string;
  readonly name: string;
}

const COLLATOR = new Intl.Collator('en', { sensitivity: 'base', numeric: true });

/** By name as people sort, so that day 2 comes before day 10; names that are equal but for case by id. */
export function byName(a: Named, b: Named): number {
  return COLLATOR.compare(a.name, b.name) || (a.id < b.id ? -1 : 1);
}
