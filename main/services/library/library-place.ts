import { access, constants, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { makeFolders } from '../files/make-folders.ts';
import { rememberedFile } from '../files/remembered-file.ts';
import { codeOf, messageOf } from '../files/system-error.ts';

const placeSchema = z.strictObject({
  format: z.literal('lanegauge.library-place'),
  version: z.literal(1),
  folder: z.string().min(1).max(4096),
});

/** Where the firm's library lies, as chosen on this computer. */
export interface LibraryPlace {
  folder(): string;
  /** Keeps another folder. What lies in the one before stays there. */
  choose(folder: string): Promise<Result<string>>;
  notices(): readonly string[];
}

/** Inside the data folder, until another place is chosen. */
export async function openLibraryPlace(dataFolder: string, now: () => Date): Promise<LibraryPlace> {
  const file = await rememberedFile({
    folder: dataFolder,
    name: 'library-place.json',
    what: 'place of the library',
    schema: placeSchema,
    now,
  });
  return {
    folder: () => file.last()?.folder ?? join(dataFolder, 'library'),
    notices: file.notices,
    async choose(folder) {
      const fault = await faultOf(folder);
      if (fault !== undefined) return fault;
      const kept = await file.update(() => ok({ format: 'lanegauge.library-place', version: 1, folder }));
      return kept.ok ? ok(folder) : kept;
    },
  };
}

/** Whether a library's folder holds anything; one that cannot be looked into may. */
export async function holdsRecords(folder: string): Promise<boolean> {
  try {
    return (await readdir(join(folder, 'records'))).length > 0;
  } catch (error) {
    return codeOf(error) !== 'ENOENT';
  }
}

/** A folder that cannot be made or written is no place for a library: it would look like one that is empty. */
async function faultOf(folder: string): Promise<Result<never> | undefined> {
  try {
    await makeFolders(folder);
    await access(folder, constants.W_OK);
    return undefined;
  } catch (error) {
    return fail(
      'library.place',
      `The library cannot lie in ${folder}: ${messageOf(error)}. The one before stays. Choose a folder that is there and may be written.`,
    );
  }
}
