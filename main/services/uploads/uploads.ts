import { randomBytes } from 'node:crypto';
import { createWriteStream, type WriteStream } from 'node:fs';
import { rm, stat, unlink } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { plainLine } from '../../../geo/units/text.ts';
import { MAP_MAX_BYTES } from '../../contract/limits.ts';
import type { AddedFile } from '../../contract/source.ts';
import { unreadable } from '../files/read-bytes.ts';
import { messageOf } from '../files/system-error.ts';
import { fileUse } from './file-use.ts';
import { makeUploadsFolder } from './uploads-folder.ts';

export interface HeldFile {
  readonly path: string;
  readonly name: string;
  /** a copy of ours, gone when the program ends; otherwise the user's own file */
  readonly passing: boolean;
  readonly bytes: number;
}

/** Files handed to the program, each known to the page by a token alone. */
export interface Uploads {
  /** Takes in bytes sent by the page. */
  addStream(name: string, bytes: Readable, signal?: AbortSignal): Promise<Result<AddedFile>>;
  /** Takes in a file where it lies. */
  addPath(path: string): Promise<Result<AddedFile>>;
  find(kind: 'upload' | 'path', token: string): HeldFile | undefined;
  /** Deletes every copy. */
  close(): Promise<void>;
}

/** Opens an empty collection. Copies lie in a folder of this process alone, made when first needed. */
export function openUploads(maxBytes = MAP_MAX_BYTES): Uploads {
  const held = new Map<string, HeldFile>();
  let folder: Promise<string> | undefined;

  async function hold(kind: 'upload' | 'path', path: string, name: string): Promise<Result<AddedFile>> {
    const { size } = await stat(path);
    const use = await fileUse(path, name);
    if (!use.ok) {
      if (kind === 'upload') await unlink(path).catch(() => {});
      return use;
    }
    const token = randomBytes(18).toString('base64url');
    held.set(`${kind}:${token}`, { path, name, passing: kind === 'upload', bytes: size });
    return ok({ source: { kind, token }, name, bytes: size, use: use.value });
  }

  return {
    async addStream(name, bytes, signal) {
      const shown = plainName(name);
      let path: string | undefined;
      let into: WriteStream | undefined;
      let size = 0;
      let tooLarge = false;
      try {
        folder ??= makeUploadsFolder();
        path = join(await folder, randomBytes(18).toString('base64url'));
        into = createWriteStream(path, { flags: 'wx', mode: 0o600 });
        await pipeline(
          bytes,
          async function* (chunks: AsyncIterable<Buffer>) {
            for await (const chunk of chunks) {
              size += chunk.length;
              tooLarge = size > maxBytes;
              if (tooLarge) throw new Error('too large');
              yield chunk;
            }
          },
          into,
          ...(signal === undefined ? [] : [{ signal }]),
        );
        return await hold('upload', path, shown);
      } catch (error) {
        if (path === undefined) folder = undefined;
        else await takeAway(path, into);
        if (tooLarge)
          return fail(
            'too-large',
            `${shown} has more than ${(maxBytes / 1e6).toFixed(0)} MB. Is it the right file?`,
          );
        return fail('upload-failed', `${shown} did not arrive whole (${messageOf(error)}). Try again.`);
      }
    },
    async addPath(path) {
      const whole = resolve(path);
      try {
        const found = await stat(whole);
        if (found.isDirectory())
          return fail('is-folder', `${path} is a folder. Choose a drive (.gpx) or a map file in it.`);
        // a pipe or a device would never end
        if (!found.isFile()) return fail('not-a-file', `${path} is not an ordinary file. Choose another.`);
        if (found.size > maxBytes)
          return fail(
            'too-large',
            `${path} has more than ${(maxBytes / 1e6).toFixed(0)} MB. Is it the right file?`,
          );
        return await hold('path', whole, plainName(basename(whole)));
      } catch (error) {
        return { ok: false, error: unreadable(path, 'file', error) };
      }
    },
    find: (kind, token) => held.get(`${kind}:${token}`),
    async close() {
      const made = await folder?.catch(() => undefined);
      if (made !== undefined) await rm(made, { recursive: true, force: true });
    },
  };
}

/** Deletes what came of it. A stream that was still opening its file makes it after all: that is waited for. */
async function takeAway(path: string, into: WriteStream | undefined): Promise<void> {
  if (into && !into.closed)
    await new Promise<void>((resolve) => into.destroy().once('close', () => resolve()));
  await unlink(path).catch(() => {});
}

/** A file name to show: no folders, nothing that steers or hides, not endless. */
export function plainName(name: string): string {
  const last = name.split(/[/\\]/).at(-1) ?? '';
  const plain = plainLine(last).slice(0, 255);
  return plain === '' ? 'unnamed file' : plain;
}
