import { isDeleted } from '../../../geo/library/bin.ts';
import { driveName } from '../../../geo/library/body/drive.ts';
import { type Item, isOfKind } from '../../../geo/library/item.ts';
import type { Kind } from '../../../geo/library/record.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import { isSameName } from '../../../geo/vehicle/free-name.ts';
import type { Library } from './library.ts';

const LISTED = 5;

/**
 * The item that was meant: by its id, with or without its kind before it; by its name as typed, or else in whatever
 * case and blanks; or by as much of the beginning of either as tells it from the others.
 */
export function findItem<K extends Kind>(library: Library, kind: K, typed: string): Result<Item<K>> {
  const word = typed.trim().toLowerCase();
  const whole = word.startsWith(`${kind}-`) ? word : `${kind}-${word}`;
  const exact = library.find(kind, whole);
  if (exact && !isDeleted(exact)) return ok(exact);
  const all = word === '' ? [] : library.list(kind);
  const begun = all.filter(
    (item) => item.id.startsWith(whole) || nameOf(item)?.trim().toLowerCase().startsWith(word),
  );
  const called = calledSo(all, typed, nameOf);
  const meant = called.length > 0 ? called : begun;
  const [only, ...others] = meant;
  if (only && others.length === 0) return ok(only);
  if (only)
    return fail(
      'library.several',
      `${quote(typed)} may be ${meant.length} of the library: ${listed(meant.slice(0, LISTED).map(sayItem))}${meant.length > LISTED ? ' and more' : ''}. Type more of the one you mean, or its id.`,
    );
  const binned = exact ? ' It lies in the bin: lanegauge yard restore brings it back.' : '';
  return fail(
    'library.none',
    `There is no ${kind} ${quote(typed)} in the library in ${library.folder}.${binned} See 'lanegauge yard list' for what there is.`,
  );
}

/** Each item that was named, once, of which a person must have chosen the version that holds. */
export function itemsNamed<K extends 'drive' | 'vehicle'>(
  library: Library,
  kind: K,
  typed: readonly string[],
): Result<Item<K>[]> {
  const items = new Map<string, Item<K>>();
  for (const each of typed) {
    const found = findItem(library, kind, each);
    if (!found.ok) return found;
    const one = refuseTwoVersions(found.value);
    if (!one.ok) return one;
    items.set(found.value.id, found.value);
  }
  return ok([...items.values()]);
}

/** Those of exactly that name, or else those of it in whatever case and blanks. */
export function calledSo<T>(
  all: readonly T[],
  name: string,
  named: (one: T) => string | undefined,
): readonly T[] {
  const exact = all.filter((one) => named(one) === name);
  return exact.length > 0 ? exact : all.filter((one) => isSameName(named(one) ?? '', name));
}

/** What it is called; undefined where its kind has no names. */
export function nameOf(item: Item): string | undefined {
  if (isOfKind(item, 'drive')) return item.versions[0] && driveName(item.versions[0].body);
  return isOfKind(item, 'vehicle') ? item.versions[0]?.body.card.name : undefined;
}

/** Its name, where it has one, with its id. */
export function sayItem(item: Item): string {
  const name = nameOf(item);
  return name === undefined ? item.id : `${quote(name, 60)} (${item.id})`;
}

/** Where a thing was changed on two computers at once, a person says first which version holds. */
export function refuseTwoVersions(item: Item): Result<undefined> {
  if (item.versions.length < 2) return ok(undefined);
  return fail(
    'library.versions',
    `${item.id} was changed on two computers at once, so there are ${item.versions.length} versions of it. Look at them with 'lanegauge yard list', then keep one: lanegauge yard choose ${item.id} VERSION.`,
  );
}
