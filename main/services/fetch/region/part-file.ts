import { createHash, type Hash } from 'node:crypto';
import { type FileHandle, open, readFile, rename, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { Region } from '../../../../geo/fetch/region/region.ts';
import { given } from '../../../../geo/given.ts';
import { replaceFile } from '../../files/replace-file.ts';

/** What is known of the file that a part is the beginning of. */
const aboutSchema = z.object({
  url: z.string(),
  /** names this version of the file; only a strong one, which stands for the same bytes */
  etag: z.string().optional(),
  totalBytes: z.number().int().positive().optional(),
});
type About = z.infer<typeof aboutSchema>;

/** Where one map file lies while it comes and once it is whole. */
export interface PartPaths {
  readonly part: string;
  readonly about: string;
  readonly whole: string;
  readonly claim: string;
}

export function pathsOf(folder: string, { id, url }: Region): PartPaths {
  const readable = id.replace(/[^a-z0-9]+/giu, '-').slice(0, 40);
  return pathsNamed(folder, `${readable}-${createHash('sha256').update(url).digest('hex').slice(0, 12)}`);
}

/** The same of the name that they have in common. */
export function pathsNamed(folder: string, name: string): PartPaths {
  return {
    part: join(folder, `${name}.part`),
    about: join(folder, `${name}.about`),
    whole: join(folder, `${name}.osm.pbf`),
    claim: join(folder, `${name}.claim`),
  };
}

/** A map file that is coming: what of it is here, hashed as it grows. */
export class PartFile {
  private readonly paths: PartPaths;
  private readonly handle: FileHandle;
  private hash: Hash;
  private size: number;
  private known: About;

  private constructor(
    paths: PartPaths,
    handle: FileHandle,
    begun: { hash: Hash; size: number; known: About },
  ) {
    this.paths = paths;
    this.handle = handle;
    this.hash = begun.hash;
    this.size = begun.size;
    this.known = begun.known;
  }

  /**
   * Opens what an earlier call left, read once more for its hash, or begins anew where that is of another file or cannot
   * be gone on with.
   * @throws what the system says; where the signal is given
   */
  static async open(paths: PartPaths, url: string, signal?: AbortSignal): Promise<PartFile> {
    // a program that ended between the last byte and whoever wanted the file
    if ((await stat(paths.part).catch(() => undefined)) === undefined)
      await rename(paths.whole, paths.part).catch(() => {});
    const known = await readAbout(paths.about);
    const handle = await open(paths.part, 'a+', 0o600);
    const begun = { hash: createHash('md5'), size: 0, known: { url } };
    try {
      const { size } = await handle.stat();
      if (known?.url !== url || known.etag === undefined) {
        if (size > 0) await handle.truncate(0);
        return new PartFile(paths, handle, begun);
      }
      await hashFrom(handle, begun.hash, { size, ...given({ signal }) });
      return new PartFile(paths, handle, { ...begun, size, known });
    } catch (error) {
      await handle.close();
      throw error;
    }
  }

  get bytes(): number {
    return this.size;
  }

  get etag(): string | undefined {
    return this.known.etag;
  }

  get totalBytes(): number | undefined {
    return this.known.totalBytes;
  }

  /** Throws away what is here: another version of the file is coming. */
  async restart(about: About): Promise<void> {
    if (this.size > 0) await this.handle.truncate(0);
    this.hash = createHash('md5');
    this.size = 0;
    this.known = about;
    await replaceFile(this.paths.about, JSON.stringify(about));
  }

  async append(chunk: Uint8Array): Promise<void> {
    let written = 0;
    while (written < chunk.length)
      written += (await this.handle.write(chunk, written, chunk.length - written)).bytesWritten;
    this.hash.update(chunk);
    this.size += chunk.length;
  }

  md5(): string {
    return this.hash.copy().digest('hex');
  }

  /** Gives the whole file its name. @returns its path */
  async finish(): Promise<string> {
    await this.handle.close();
    await rename(this.paths.part, this.paths.whole);
    return this.paths.whole;
  }

  /** Leaves it for another time. */
  async leave(): Promise<void> {
    await this.handle.close();
    if (this.size === 0) await discardFiles(this.paths);
  }

  async discard(): Promise<void> {
    await this.handle.close();
    await discardFiles(this.paths);
  }
}

/** Takes away all there is of a file, whole or not. */
export async function discardFiles({ part, about, whole }: PartPaths): Promise<void> {
  await Promise.all([part, about, whole].map((path) => unlink(path).catch(() => {})));
}

async function readAbout(path: string): Promise<About | undefined> {
  try {
    return aboutSchema.safeParse(JSON.parse(await readFile(path, 'utf8'))).data;
  } catch {
    return undefined;
  }
}

const READ_BYTES = 1 << 20;

async function hashFrom(
  handle: FileHandle,
  hash: Hash,
  { size, signal }: { readonly size: number; readonly signal?: AbortSignal },
): Promise<void> {
  const buffer = Buffer.allocUnsafe(READ_BYTES);
  for (let at = 0; at < size; ) {
    signal?.throwIfAborted();
    const { bytesRead } = await handle.read(buffer, 0, READ_BYTES, at);
    if (bytesRead === 0) throw new Error('the file grew shorter while it was read');
    hash.update(buffer.subarray(0, bytesRead));
    at += bytesRead;
  }
}
