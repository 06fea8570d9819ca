import { createHash, randomUUID } from 'node:crypto';
import { constants } from 'node:fs';
import { copyFile, rename, stat } from 'node:fs/promises';
import type { z } from 'zod';
import { sayFault } from '../../../geo/document/say-fault.ts';
import { listed } from '../../../geo/units/text.ts';
import { readBytes } from './read-bytes.ts';
import { codeOf, messageOf } from './system-error.ts';

/** Larger files are none of ours. */
export const KEPT_MAX_BYTES = 8 * 1024 * 1024;

/** What of a damaged file can be used all the same. */
export interface Salvaged<T> {
  readonly value: T;
  /** what cannot, each with its name and why */
  readonly lost: readonly string[];
}

/** @returns undefined where nothing can be used */
export type Salvage<T> = (json: unknown) => Salvaged<T> | undefined;

export interface KeptPlace<T> {
  readonly path: string;
  readonly backup: string;
  readonly what: string;
  readonly schema: z.ZodType<T>;
  readonly salvage?: Salvage<T>;
  now(): Date;
}

/** `stuck`: a file lies there that could be neither read nor moved away, so it must not be written over. */
export type ReadKept<T> = { readonly value?: T; readonly notices: readonly string[] } & (
  | { readonly is: 'sound' }
  | { readonly is: 'damaged' | 'stuck'; readonly say: string }
);

type Tried<T> =
  | { is: 'value'; value: T }
  | { is: 'missing' }
  | { is: 'partly'; value: T; lost: readonly string[]; bytes: Uint8Array }
  | { is: 'damaged'; why: string }
  | { is: 'unreadable'; why: string };

/**
 * Reads a kept file, its previous version where it is missing or damaged.
 * @param how `look` leaves everything where it is; `set aside` moves or copies what is damaged to another name
 */
export async function readKept<T>(place: KeptPlace<T>, how: 'look' | 'set aside'): Promise<ReadKept<T>> {
  const { path, backup, what } = place;
  const first = await tryFile(path, place);
  if (first.is === 'value') return { is: 'sound', value: first.value, notices: [] };
  if (first.is === 'unreadable')
    return stuck(
      `The ${what} at ${path} could not be read (${first.why}), so nothing is saved over it. Make it readable and start again.`,
    );
  if (first.is !== 'missing' && how === 'look') {
    const say = `The ${what} at ${path} is damaged.`;
    return { is: 'damaged', say, notices: [say] };
  }
  if (first.is === 'partly') return keepTheRest(place, first);
  const notices: string[] = [];
  if (first.is === 'damaged') {
    const aside = await setAside(place, first.why);
    if (!aside.done) return stuck(aside.say);
    notices.push(aside.say);
  }
  const second = await tryFile(backup, place);
  if (second.is !== 'value' && second.is !== 'partly') return { is: 'sound', notices };
  if (first.is === 'missing') notices.push(`The ${what} was missing.`);
  notices.push(`The previous version of the ${what} is used.`);
  return { is: 'sound', value: second.value, notices };
}

function stuck(say: string): ReadKept<never> {
  return { is: 'stuck', say, notices: [say] };
}

async function setAside<T>({ path, what, now }: KeptPlace<T>, why: string) {
  const aside = `${path}.damaged-${now().toISOString().replaceAll(/[:.]/g, '-')}-${randomUUID().slice(0, 8)}`;
  try {
    await rename(path, aside);
    const say = `The ${what} could not be used (${why}). It was set aside as ${aside}; nothing in it was changed.`;
    return { done: true, say };
  } catch (error) {
    const say = `The damaged ${what} at ${path} could not be set aside (${messageOf(error)}), so nothing is saved over it. Move it away and start again.`;
    return { done: false, say };
  }
}

/** A copy of the whole is set aside, once for each content, before anything is written without what is lost. */
async function keepTheRest<T>(
  { path, what }: KeptPlace<T>,
  { value, lost, bytes }: { value: T; lost: readonly string[]; bytes: Uint8Array },
): Promise<ReadKept<T>> {
  const aside = `${path}.damaged-${createHash('sha256').update(bytes).digest('hex').slice(0, 16)}`;
  try {
    await copyFile(path, aside, constants.COPYFILE_EXCL);
  } catch (error) {
    if (codeOf(error) !== 'EEXIST')
      return stuck(
        `The ${what} at ${path} is damaged in part and could not be copied (${messageOf(error)}), so nothing is saved over it. Make room and start again.`,
      );
  }
  const say = `In the ${what} this could not be used: ${listed(lost)}. The rest stays; the whole as it was lies at ${aside}.`;
  return { is: 'sound', value, notices: [say] };
}

async function tryFile<T>(path: string, { what, schema, salvage }: KeptPlace<T>): Promise<Tried<T>> {
  try {
    const found = await stat(path);
    if (!found.isFile()) return { is: 'damaged', why: 'it is not a file' };
  } catch (error) {
    const missing = codeOf(error) === 'ENOENT' || codeOf(error) === 'ENOTDIR';
    return missing ? { is: 'missing' } : { is: 'unreadable', why: messageOf(error) };
  }
  const read = await readBytes(path, what, KEPT_MAX_BYTES);
  if (!read.ok)
    return { is: read.error.code === 'too-large' ? 'damaged' : 'unreadable', why: read.error.message };
  const bytes = read.value;
  const parsed = parse(bytes, schema);
  if (parsed.is === 'value') return parsed;
  const rest = parsed.json === undefined ? undefined : salvage?.(parsed.json);
  return rest ? { is: 'partly', ...rest, bytes } : { is: 'damaged', why: parsed.why };
}

/** Why a file with these bytes could not be read as a whole; undefined where it could. */
export function whyUnreadable<T>(bytes: Uint8Array, schema: z.ZodType<T>): string | undefined {
  if (bytes.length > KEPT_MAX_BYTES) return `it would have ${(bytes.length / 1024 ** 2).toFixed(1)} MB`;
  const parsed = parse(bytes, schema);
  return parsed.is === 'value' ? undefined : parsed.why;
}

type Parsed<T> = { is: 'value'; value: T } | { is: 'damaged'; why: string; json?: unknown };

function parse<T>(bytes: Uint8Array, schema: z.ZodType<T>): Parsed<T> {
  try {
    const json: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    const parsed = schema.safeParse(json);
    if (parsed.success) return { is: 'value', value: parsed.data };
    const [issue] = parsed.error.issues;
    const why =
      issue === undefined ? 'it cannot be used' : sayFault(issue, json, { whole: 'the whole', kind: 'file' });
    return { is: 'damaged', why, json };
  } catch (error) {
    return { is: 'damaged', why: messageOf(error) };
  }
}
