import { join } from 'node:path';
import type { z } from 'zod';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { makeFolders } from './make-folders.ts';
import { KEPT_MAX_BYTES, type ReadKept, readKept, type Salvage, whyUnreadable } from './read-kept.ts';
import { replaceFile } from './replace-file.ts';
import { messageOf } from './system-error.ts';
import { inTurn, type Turn } from './take-turn.ts';

/** A small JSON file that is ours: read, changed in turn with every other program, its previous version kept beside it. */
export interface KeptFile<T> {
  /** @returns the value (undefined: there is none yet) and sentences about what was wrong with it */
  read(): Promise<{ readonly value?: T; readonly notices: readonly string[] }>;
  /**
   * Changes what lies in the file now, whoever wrote it; one change after the other in the order asked for.
   * @param change a refusal of it leaves the file alone
   * @param afterwards what goes with the change, done before another program has its turn
   * @returns what is kept now, and sentences about what was wrong with what was found
   */
  update(change: Change<T>, afterwards?: Afterwards<T>): Promise<Result<Updated<T>>>;
}

/** What is to be kept, from what is found; undefined: nothing yet. */
export type Change<T> = (found: T | undefined) => Result<T> | Promise<Result<T>>;

export type Afterwards<T> = (kept: T) => Promise<void>;

export interface Updated<T> {
  readonly value: T;
  readonly notices: readonly string[];
}

export interface KeptFileOptions<T> {
  readonly folder: string;
  /** file name; the backup adds `.bak`, what is set aside `.damaged-…` */
  readonly name: string;
  /** for sentences: "list of vehicles" */
  readonly what: string;
  readonly schema: z.ZodType<T>;
  /** makes the best of a file of which a part is damaged */
  readonly salvage?: Salvage<T>;
  now(): Date;
}

/** Binds one kept file. Nothing is read or made until asked. */
export function keptFile<T>(options: KeptFileOptions<T>): KeptFile<T> {
  const path = join(options.folder, options.name);
  const place = { ...options, path, backup: `${path}.bak` };
  let writing: Promise<unknown> = Promise.resolve();
  return {
    async read() {
      const found = await readKept(place, 'look');
      if (found.is === 'sound') return found;
      // to set something aside is to write
      try {
        const read = await inTurn(options.folder, () => readKept(place, 'set aside'));
        return read.ok ? read.value : { notices: [read.error.message] };
      } catch (error) {
        return { notices: [`${found.say} It could not be set aside (${messageOf(error)}).`] };
      }
    },
    update(change, afterwards) {
      const updated = writing.then(() => update(place, change, afterwards));
      writing = updated;
      return updated;
    },
  };
}

type Place<T> = KeptFileOptions<T> & { readonly path: string; readonly backup: string };

async function update<T>(
  place: Place<T>,
  change: Change<T>,
  afterwards: Afterwards<T> | undefined,
): Promise<Result<Updated<T>>> {
  const { folder, what } = place;
  try {
    await makeFolders(folder);
    const done = await inTurn(folder, async (turn) => {
      const updated = await updateInTurn(place, change, turn);
      if (updated.ok) await afterwards?.(updated.value.value);
      return updated;
    });
    return done.ok ? done.value : fail('not-saved', done.error.message);
  } catch (error) {
    return fail(
      'not-saved',
      `The ${what} could not be saved in ${folder} (${messageOf(error)}). Check the disk; what was there is unchanged.`,
    );
  }
}

async function updateInTurn<T>(place: Place<T>, change: Change<T>, turn: Turn): Promise<Result<Updated<T>>> {
  const { path, backup, what, schema } = place;
  const found: ReadKept<T> = await readKept(place, 'set aside');
  if (found.is === 'stuck') return fail('not-saved', found.say);
  const next = await change(found.value);
  if (!next.ok) return next;
  const text = `${JSON.stringify(next.value, null, 2)}\n`;
  const why = whyUnreadable(Buffer.from(text), schema);
  if (why !== undefined)
    return fail(
      'not-saved',
      `The ${what} was not saved, since it could not be read again: ${why}. At most ${KEPT_MAX_BYTES / 1024 ** 2} MB can be kept. What was there is unchanged; remove something first.`,
    );
  await replaceFile(path, text, { backup, mayStill: turn.isMine });
  return ok({ value: next.value, notices: found.notices });
}
