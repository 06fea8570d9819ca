import fs from 'node:fs';
import { open } from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';

/** full: what needs room fails. ended: nothing is changed any more, as where the program was killed or its disk taken out. */
export type Failure = 'full' | 'ended';

/** A disk that fails from some operation on. */
export interface FailingDisk {
  /** operations that failed, or would have */
  count(): number;
  restore(): void;
}

type Any = (...words: never[]) => unknown;
type Holder = Record<string, Any>;

const NEEDS_ROOM = {
  sync: ['writeSync', 'writevSync', 'writeFileSync', 'mkdirSync', 'copyFileSync'],
  later: ['writeFile', 'appendFile', 'mkdir', 'copyFile', 'rename'],
  handle: ['write', 'writev', 'writeFile', 'appendFile', 'sync', 'datasync'],
};
const CHANGES = {
  sync: ['unlinkSync', 'rmSync', 'renameSync', 'rmdirSync'],
  later: ['unlink', 'rm', 'rmdir', 'truncate'],
  handle: ['truncate'],
};
/** Flags of an opening by numbers that may change the file. */
const CHANGING = fs.constants.O_WRONLY | fs.constants.O_RDWR | fs.constants.O_CREAT | fs.constants.O_TRUNC;
const FAILS = {
  full: { code: 'ENOSPC', say: 'no space left on device' },
  ended: { code: 'EIO', say: 'i/o error' },
};

/**
 * Makes every operation on files that needs room (or changes anything) fail, from the one of this number on, counted
 * from 0; openings that make a file are such operations too. Only in this thread.
 */
export async function failFrom(number: number, failure: Failure): Promise<FailingDisk> {
  let count = 0;
  const error = (): Error => {
    const { code, say } = FAILS[failure];
    return Object.assign(new Error(`${code}: ${say}`), { code });
  };
  const restores: (() => void)[] = [];
  const replace = (holder: Holder, name: string, make: (real: Any) => Any): void => {
    const real = holder[name];
    if (real === undefined) return;
    holder[name] = make(real);
    restores.push(() => {
      holder[name] = real;
    });
  };
  const failing = (throws: boolean, counts: (words: readonly unknown[]) => boolean) => (real: Any) =>
    function (this: unknown, ...words: never[]): unknown {
      if (!counts(words) || count++ < number) return real.apply(this, words);
      if (throws) throw error();
      return Promise.reject(error());
    };
  const always = () => true;
  const makes = ([, flags]: readonly unknown[]) =>
    typeof flags === 'number' ? (flags & CHANGING) !== 0 : flags !== undefined && flags !== 'r';
  // writing over what is there needs no room
  const grows = ([, , options]: readonly unknown[]) =>
    !(typeof options === 'object' && options !== null && 'flag' in options && options.flag === 'r+');
  const handles = await handlePrototype();
  const groups = failure === 'full' ? [NEEDS_ROOM] : [NEEDS_ROOM, CHANGES];
  const syncs = fs as unknown as Holder;
  const laters = fs.promises as unknown as Holder;
  for (const { sync, later, handle } of groups) {
    for (const name of sync) replace(syncs, name, failing(true, always));
    for (const name of later) replace(laters, name, failing(false, failure === 'full' ? grows : always));
    for (const name of handle) replace(handles, name, failing(false, always));
  }
  replace(syncs, 'openSync', failing(true, makes));
  replace(laters, 'open', failing(false, makes));
  syncBuiltinESMExports();
  return {
    count: () => count,
    restore() {
      for (const restore of restores) restore();
      syncBuiltinESMExports();
    },
  };
}

async function handlePrototype(): Promise<Holder> {
  const handle = await open(import.meta.filename, 'r');
  const prototype: unknown = Object.getPrototypeOf(handle);
  await handle.close();
  return prototype as Holder;
}
