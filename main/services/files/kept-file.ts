import { randomUUID } from 'node:crypto';
import { copyFile, mkdir, open, rename, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import type { z } from 'zod';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { readBytes } from './read-bytes.ts';

const KEPT_MAX_BYTES = 8 * 1024 * 1024;

/** A small JSON file that is ours: read once at the start, written whole, its previous version kept beside it. */
export interface KeptFile<T> {
  /** @returns the value (undefined: there is none yet) and sentences about what was wrong with it */
  read(): Promise<{ readonly value?: T; readonly notices: string[] }>;
  /** Writes one after the other in the order asked for. */
  write(value: T): Promise<Result<T>>;
}

export interface KeptFileOptions<T> {
  readonly folder: string;
  /** file name; the backup adds `.bak`, what is set aside `.damaged-…` */
  readonly name: string;
  /** for sentences: "list of vehicles" */
  readonly what: string;
  readonly schema: z.ZodType<T>;
  now(): Date;
}

type Unusable = { is: 'damaged' | 'unreadable'; why: string };
type Tried<T> = { is: 'value'; value: T } | { is: 'missing' } | Unusable;

interface KeptState<T> extends KeptFileOptions<T> {
  readonly path: string;
  readonly backup: string;
  /** set when a file lies there that could be neither read nor moved away: it must not be written over */
  blocked: string | undefined;
  writing: Promise<unknown>;
}

/** Binds one kept file. Nothing is read or made until asked. */
export function keptFile<T>(options: KeptFileOptions<T>): KeptFile<T> {
  const path = join(options.folder, options.name);
  const state: KeptState<T> = {
    ...options,
    path,
    backup: `${path}.bak`,
    blocked: undefined,
    writing: Promise.resolve(),
  };
  return {
    read: () => readKept(state),
    write(value) {
      const written = state.writing.then(() => replace(state, value));
      state.writing = written;
      return written;
    },
  };
}

async function readKept<T>(state: KeptState<T>): Promise<{ value?: T; notices: string[] }> {
  const { path, backup, what, schema } = state;
  state.blocked = undefined;
  const first = await tryFile(path, what, schema);
  if (first.is === 'value') return { value: first.value, notices: [] };
  const second = await tryFile(backup, what, schema);
  if (first.is === 'missing' && second.is === 'missing') return { notices: [] };
  const notices = first.is === 'missing' ? [`The ${what} was missing.`] : [await setAside(state, first)];
  if (second.is === 'value') {
    notices.push(`The previous version of the ${what} is used.`);
    return { value: second.value, notices };
  }
  return { notices };
}

async function setAside<T>(state: KeptState<T>, found: Unusable): Promise<string> {
  const { path, what, now } = state;
  if (found.is === 'damaged') {
    const aside = `${path}.damaged-${now().toISOString().replaceAll(/[:.]/g, '-')}-${randomUUID().slice(0, 8)}`;
    try {
      await rename(path, aside);
      return `The ${what} could not be used (${found.why}). It was set aside as ${aside}; nothing in it was changed.`;
    } catch (error) {
      state.blocked = `The damaged ${what} at ${path} could not be set aside (${messageOf(error)}), so nothing is saved over it. Move it away and start again.`;
      return state.blocked;
    }
  }
  state.blocked = `The ${what} at ${path} could not be read (${found.why}), so nothing is saved over it. Make it readable and start again.`;
  return state.blocked;
}

async function replace<T>(
  { blocked, path, backup, folder, what }: KeptState<T>,
  value: T,
): Promise<Result<T>> {
  if (blocked !== undefined) return fail('not-saved', blocked);
  const passing = `${path}.${randomUUID()}`;
  try {
    await mkdir(folder, { recursive: true });
    const handle = await open(passing, 'wx', 0o600);
    try {
      await handle.writeFile(`${JSON.stringify(value, null, 2)}\n`);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await keepPrevious(path, backup);
    await rename(passing, path);
    return ok(value);
  } catch (error) {
    await unlink(passing).catch(() => {});
    return fail(
      'not-saved',
      `The ${what} could not be saved in ${folder} (${messageOf(error)}). Check the disk; what was there is unchanged.`,
    );
  }
}

async function keepPrevious(path: string, backup: string): Promise<void> {
  const passing = `${backup}.${randomUUID()}`;
  try {
    await copyFile(path, passing);
    await rename(passing, backup);
  } catch (error) {
    await unlink(passing).catch(() => {});
    if (codeOf(error) !== 'ENOENT') throw error;
  }
}

async function tryFile<T>(path: string, what: string, schema: z.ZodType<T>): Promise<Tried<T>> {
  try {
    const found = await stat(path);
    if (!found.isFile()) return { is: 'damaged', why: 'it is not a file' };
  } catch (error) {
    const missing = codeOf(error) === 'ENOENT' || codeOf(error) === 'ENOTDIR';
    return missing ? { is: 'missing' } : { is: 'unreadable', why: messageOf(error) };
  }
  const bytes = await readBytes(path, what, KEPT_MAX_BYTES);
  if (!bytes.ok)
    return { is: bytes.error.code === 'too-large' ? 'damaged' : 'unreadable', why: bytes.error.message };
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes.value);
    const parsed = schema.safeParse(JSON.parse(text));
    if (parsed.success) return { is: 'value', value: parsed.data };
    const [issue] = parsed.error.issues;
    return { is: 'damaged', why: `${issue?.path.join('.') || 'the whole'}: ${issue?.message}` };
  } catch (error) {
    return { is: 'damaged', why: messageOf(error) };
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

function codeOf(error: unknown): unknown {
  return error instanceof Error && 'code' in error ? error.code : undefined;
}
