import { stat } from 'node:fs/promises';
import { listed, quote } from '../../../geo/units/text.ts';
import type { ShelfMap } from '../../contract/shelf.ts';
import type { Manifest } from './manifest.ts';
import type { MapFile } from './put-on-shelf.ts';

/** What a map can be made anew from. */
export interface SourcesThere {
  /** `files` where all that it was made from is there; else why it is not */
  readonly from: NonNullable<ShelfMap['mendFrom']>;
  readonly files: readonly MapFile[];
  /** names of the others */
  readonly lost: readonly string[];
}

/** Looks for the files that a map was made from. */
export async function sourcesThere({ parts, origin }: Manifest): Promise<SourcesThere> {
  const files: MapFile[] = [];
  const lost: string[] = [];
  let isGone = false;
  for (const { path, source } of parts) {
    if (path !== undefined && (await isFile(path))) files.push({ path, name: source.name, stays: true });
    else {
      lost.push(source.name);
      isGone ||= path !== undefined;
    }
  }
  if (lost.length === 0) return { from: 'files', files, lost };
  return { from: isGone ? 'gone' : origin.by === 'file' ? 'copy' : 'fetched', files, lost };
}

/** Why a map cannot be made anew, and what can be done. */
export function sayNotMended(name: string, { from, lost }: SourcesThere): string {
  const again = `Choose a file of it under Shelf, or: lanegauge shelf import MAP --name ${quote(name)}`;
  const files = listed(lost.map((each) => quote(each)));
  const were = lost.length === 1 ? 'is not where it was' : 'are not where they were';
  switch (from) {
    case 'copy':
      return `${quote(name)} cannot be made anew by itself: ${files} came through a window that cannot see where your files lie. ${again}.`;
    case 'fetched':
      return `${quote(name)} cannot be made anew by itself: what was fetched for it was not kept. Fetch it again for a drive there. ${again}.`;
    default:
      return `${quote(name)} cannot be made anew: ${files} ${were}. ${again}.`;
  }
}

function isFile(path: string): Promise<boolean> {
  return stat(path).then(
    (found) => found.isFile(),
    () => false,
  );
}
