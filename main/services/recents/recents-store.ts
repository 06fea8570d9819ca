import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { copyFile, mkdir, readdir, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { RECENTS_MAX } from '../../contract/limits.ts';
import { type FileUse, type Recent, recentSchema } from '../../contract/source.ts';
import { keptFile } from '../files/kept-file.ts';

/** Files up to this size are kept as a copy while they are in the list. */
const COPY_MAX_BYTES = 256 * 1024 * 1024;

/** What the page is not told: where the file lies. */
const entrySchema = recentSchema.extend({ path: z.string().min(1).max(4096) });
type Entry = z.infer<typeof entrySchema>;

const recentsFileSchema = z.strictObject({
  format: z.literal('lanegauge.recents'),
  version: z.literal(1),
  entries: z.array(entrySchema).max(RECENTS_MAX),
});

export interface RecentFile {
  readonly path: string;
  readonly name: string;
  readonly use: FileUse;
  /** will be gone when the program ends */
  readonly passing: boolean;
  readonly bytes: number;
}

export interface Recents {
  list(): Recent[];
  find(id: string): { readonly path: string; readonly name: string } | undefined;
  /** Puts a file first; the same file is never listed twice. A passing file is copied, unless it is large. */
  add(file: RecentFile): Promise<void>;
  forget(id: string): Promise<Result<Recent[]>>;
  readonly notices: readonly string[];
}

/** Reads the list of recently opened files. */
export async function openRecents(folder: string, now: () => Date): Promise<Recents> {
  const file = keptFile({
    folder,
    name: 'recents.json',
    what: 'list of recent files',
    schema: recentsFileSchema,
    now,
  });
  const { value, notices } = await file.read();
  let entries: readonly Entry[] = value?.entries ?? [];

  const list = () => entries.map(({ path: _, ...told }) => told);
  const write = (next: readonly Entry[]) =>
    file.write({ format: 'lanegauge.recents', version: 1, entries: [...next] });

  const copies = join(folder, 'copies');
  let adding: Promise<void> = sweep();

  /** Deletes copies that have left the list. */
  async function sweep(): Promise<void> {
    const names = await readdir(copies).catch(() => []);
    const listed = new Set(entries.map(({ path }) => path));
    const left = names.map((copy) => join(copies, copy)).filter((path) => !listed.has(path));
    await Promise.all(left.map((path) => unlink(path).catch(() => {})));
  }

  async function add({ path, name, use, passing, bytes }: RecentFile): Promise<void> {
    if (passing && bytes > COPY_MAX_BYTES) return;
    try {
      const kept = passing ? await copy(path, copies) : path;
      const id = createHash('sha256').update(`${use}:${kept}`).digest('base64url').slice(0, 16);
      const entry = { id, use, name: name.slice(0, 255), path: kept, openedAt: now().toISOString() };
      entries = [entry, ...entries.filter((old) => old.id !== id)].slice(0, RECENTS_MAX);
      await write(entries);
    } catch {
      // the file opened well: that it will not be remembered is no reason to stop
    }
    await sweep();
  }

  return {
    notices,
    list,
    find: (id) => entries.find((entry) => entry.id === id),
    add(file) {
      adding = adding.then(() => add(file));
      return adding;
    },
    async forget(id) {
      const left = entries.filter((entry) => entry.id !== id);
      if (left.length === entries.length)
        return fail('no-such-recent', 'That file is no longer in the list of recent files.');
      const written = await write(left);
      if (!written.ok) return written;
      entries = left;
      await sweep();
      return ok(list());
    },
  };
}

/** Copies a file under a name made of its content, so that the same file is kept once. */
async function copy(path: string, folder: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path)) hash.update(chunk);
  const kept = join(folder, hash.digest('hex'));
  await mkdir(folder, { recursive: true });
  await copyFile(path, kept);
  return kept;
}
