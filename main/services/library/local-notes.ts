import { existsSync } from 'node:fs';
import type { LocalNote } from '../../../geo/notes/note.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import type { Library } from './library.ts';
import { openLibraryPlace } from './library-place.ts';
import { openLibrary } from './open-library.ts';

/** The local notes of a library. One that was changed in two places counts as it is in both, until a person has chosen. */
export function notesOf(library: Pick<Library, 'list'>): LocalNote[] {
  return library.list('note').flatMap(({ id, versions }) => versions.map(({ body }) => ({ ...body, id })));
}

/** A library whose notes a check is to use: the one named, else the one kept on this computer. */
export interface YardNamed {
  readonly dataFolder: string;
  readonly folder?: string;
}

/** Notes, and what should be known of where they lie. */
export interface NotesRead {
  readonly localNotes: readonly LocalNote[];
  readonly say: readonly string[];
}

/** Reads the notes of a library. One that is named and not there is refused; without any there are no notes. */
export async function readYardNotes(
  { dataFolder, folder: named }: YardNamed,
  now: () => Date,
): Promise<Result<NotesRead>> {
  if (named !== undefined && !existsSync(named))
    return fail(
      'yard.none',
      `--yard ${quote(named, 200)}: there is no such folder. Name the folder of the library, or leave the notes out with --no-notes.`,
    );
  const place = named === undefined ? await openLibraryPlace(dataFolder, now) : undefined;
  const library = await openLibrary({ folder: named ?? place?.folder() ?? '', dataFolder, now });
  return ok({
    localNotes: notesOf(library),
    say: [...(place?.notices() ?? []), ...library.notices()],
  });
}
