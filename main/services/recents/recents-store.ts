import { createHash } from 'node:crypto';
import { z } from 'zod';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { RECENTS_MAX } from '../../contract/limits.ts';
import { type FileUse, type Recent, recentSchema } from '../../contract/source.ts';
import { keptFile } from '../files/kept-file.ts';

/** What the page is not told: where the file lies. */
const entrySchema = recentSchema.extend({ path: z.string().min(1).max(4096) });
type Entry = z.infer<typeof entrySchema>;

const recentsFileSchema = z.strictObject({
  format: z.literal('lanegauge.recents'),
  version: z.literal(1),
  entries: z.array(entrySchema).max(RECENTS_MAX),
});

export interface Recents {
  list(): Recent[];
  find(id: string): { readonly path: string; readonly name: string } | undefined;
  /** Puts a file first; the same file is never listed twice. */
  add(file: { path: string; name: string; use: FileUse }): Promise<void>;
  forget(id: string): Promise<Result<Recent[]>>;
  /** every path still in the list */
  paths(): string[];
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

  return {
    notices,
    list,
    paths: () => entries.map(({ path }) => path),
    find: (id) => entries.find((entry) => entry.id === id),
    async add({ path, name, use }) {
      const id = createHash('sha256').update(`${use}:${path}`).digest('base64url').slice(0, 16);
      const entry = { id, use, name: name.slice(0, 255), path, openedAt: now().toISOString() };
      entries = [entry, ...entries.filter((old) => old.id !== id)].slice(0, RECENTS_MAX);
      // a list that cannot be saved is still right for as long as the program runs
      await write(entries);
    },
    async forget(id) {
      const left = entries.filter((entry) => entry.id !== id);
      if (left.length === entries.length)
        return fail('no-such-recent', 'That file is no longer in the list of recent files.');
      const written = await write(left);
      if (!written.ok) return written;
      entries = left;
      return ok(list());
    },
  };
}
