import { driveName } from '../../../geo/library/body/drive.ts';
import type { Units } from '../../../geo/units/in-units.ts';
import { listed } from '../../../geo/units/text.ts';
import { tellApart } from '../../../geo/yard/tell-apart.ts';
import type { Library } from './library.ts';

/** Drives of the library that have their name in common with another: by id, what tells each from the others. */
export function drivesAlike(library: Library, units: Units): ReadonlyMap<string, string> {
  const drives = library.list('drive').flatMap(({ id, versions }) => {
    const body = versions[0]?.body;
    return body === undefined ? [] : [{ ...body, id, name: driveName(body) }];
  });
  return tellApart(drives, units);
}

/** That other drives have a drive's name, and how they are told apart; '' where none has. */
export function sayAlike(library: Library, ids: readonly string[]): string {
  const told = drivesAlike(library, 'metric');
  const those = ids.flatMap((id) => {
    const alike = told.get(id);
    return alike === undefined ? [] : [alike === id ? id : `${alike} (${id})`];
  });
  if (those.length === 0) return '';
  const which = those.length === 1 ? `this one is ${those[0]}` : `these are ${listed(those)}`;
  return `Another drive of the library has the same name: ${which}. Give it a name of its own with: lanegauge yard rename ID NAME\n`;
}
