import { isDeleted } from '../../../geo/library/bin.ts';
import type { Item } from '../../../geo/library/item.ts';
import type { Kind } from '../../../geo/library/record.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { listed, quote } from '../../../geo/units/text.ts';
import type { Library } from '../../services/library/library.ts';

const LISTED = 5;

/**
 * The item that was meant: by its id, with or without its kind before it, or by as much of its beginning as tells it
 * from the others.
 */
export function findItem<K extends Kind>(library: Library, kind: K, typed: string): Result<Item<K>> {
  const word = typed.trim().toLowerCase();
  const whole = word.startsWith(`${kind}-`) ? word : `${kind}-${word}`;
  const exact = library.find(kind, whole);
  if (exact && !isDeleted(exact)) return ok(exact);
  const begin = word === '' ? [] : library.list(kind).filter(({ id }) => id.startsWith(whole));
  const [only, ...others] = begin;
  if (only && others.length === 0) return ok(only);
  if (only)
    return fail(
      'library.several',
      `${quote(typed)} begins the names of ${begin.length}: ${listed(begin.slice(0, LISTED).map(({ id }) => id))}${begin.length > LISTED ? ' and more' : ''}. Type more of the one you mean.`,
    );
  const binned = exact ? ' It lies in the bin: lanegauge yard restore brings it back.' : '';
  return fail(
    'library.none',
    `There is no ${kind} ${quote(typed)} in the library in ${library.folder}.${binned} See 'lanegauge yard list' for what there is.`,
  );
}

/** Where a thing was changed on two computers at once, a person says first which version holds. */
export function refuseTwoVersions(item: Item): Result<undefined> {
  if (item.versions.length < 2) return ok(undefined);
  return fail(
    'library.versions',
    `${item.id} was changed on two computers at once, so there are ${item.versions.length} versions of it. Look at them with 'lanegauge yard list', then keep one: lanegauge yard choose ${item.id} VERSION.`,
  );
}
