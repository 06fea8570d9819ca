import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { copyFile, readdir, rename, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { type DayPlan, dayPlanSchema } from '../../../geo/day/plan.ts';
import { given } from '../../../geo/given.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { LEAVE_AT } from '../../contract/leave-at.ts';
import { RECENTS_MAX } from '../../contract/limits.ts';
import { type FileUse, type OwnMap, type Recent, recentSchema, type Source } from '../../contract/source.ts';
import { makeFolders } from '../files/make-folders.ts';
import { passingName } from '../files/passing-files.ts';
import { rememberedFile } from '../files/remembered-file.ts';
import { memberOf, salvageList } from '../files/salvage-list.ts';

/** Files up to this size are kept as a copy while they are in the list. */
const COPY_MAX_BYTES = 256 * 1024 * 1024;

/** What the page is not told: where the file lies. */
const entrySchema = recentSchema.extend({ path: z.string().min(1).max(4096) });
type Entry = z.infer<typeof entrySchema>;

const recentsFileSchema = z.strictObject({
  format: z.literal('lanegauge.recents'),
  version: z.literal(1),
  entries: z.array(entrySchema).max(RECENTS_MAX),
  /** leave times of the drives that come with the program, by their ids */
  sampleLeaves: z.record(z.string(), z.string().regex(LEAVE_AT)).optional(),
  /** and the days planned for them */
  sampleDays: z.record(z.string(), dayPlanSchema).optional(),
});
type RecentsFile = z.infer<typeof recentsFileSchema>;

export interface RecentFile {
  readonly path: string;
  readonly name: string;
  readonly use: FileUse;
  /** will be gone when the program ends */
  readonly passing: boolean;
  readonly bytes: number;
  /** of a drive: the map it is opened on */
  readonly map?: OwnMap;
}

export interface Recents {
  list(): Recent[];
  find(id: string): { readonly path: string; readonly name: string } | undefined;
  refresh(): Promise<void>;
  /**
   * Puts a file first; the same file is never listed twice. A passing file is copied, unless it is large.
   * @returns its id in the list; undefined where it is not remembered
   */
  add(file: RecentFile): Promise<string | undefined>;
  /** Keeps the leave time of a listed drive, or of a sample's; undefined: none. */
  keepLeaveAt(of: Source, leaveAt: string | undefined): Promise<Result<undefined>>;
  /** the leave time kept with a drive */
  leaveAtOf(drive: Source): string | undefined;
  /** The same of the day planned for it. */
  keepDay(of: Source, day: DayPlan | undefined): Promise<Result<undefined>>;
  dayOf(drive: Source): DayPlan | undefined;
  forget(id: string): Promise<Result<Recent[]>>;
  notices(): readonly string[];
}

/** Reads the list of recently opened files. */
export async function openRecents(folder: string, now: () => Date): Promise<Recents> {
  const file = await rememberedFile({
    folder,
    name: 'recents.json',
    what: 'list of recent files',
    schema: recentsFileSchema,
    salvage: salvageList({
      schema: recentsFileSchema,
      key: 'entries',
      item: entrySchema,
      most: RECENTS_MAX,
      idOf: ({ id }) => id,
      nameOf: (item) => memberOf(item, 'name'),
    }),
    now,
  });
  const copies = join(folder, 'copies');
  const entries = () => file.last()?.entries ?? [];
  const list = () => entries().map(({ path: _, ...told }) => told);

  /** Copies go with the entries that name them, in the same turn: another program may be adding its own. */
  const change = (make: (found: readonly Entry[]) => Result<Entry[]> | Promise<Result<Entry[]>>) =>
    file.update(
      async (found) => {
        const made = await make(found?.entries ?? entries());
        return made.ok ? ok({ ...(found ?? file.last() ?? NO_RECENTS), entries: made.value }) : made;
      },
      ({ entries: left }) => sweepCopies(copies, left),
    );

  async function add({ path, name, use, passing, bytes, map }: RecentFile): Promise<string | undefined> {
    if (passing && bytes > COPY_MAX_BYTES) return undefined;
    try {
      const copy = passing ? await copyAside(path, copies) : undefined;
      const kept = copy?.path ?? path;
      const id = createHash('sha256').update(`${use}:${kept}`).digest('base64url').slice(0, 16);
      const entry = {
        id,
        use,
        name: name.slice(0, 255),
        path: kept,
        openedAt: now().toISOString(),
        ...given({ map }),
      };
      await change(async (found) => {
        if (copy) await rename(copy.aside, copy.path);
        const old = found.find((each) => each.id === id);
        const others = found.filter((each) => each.id !== id);
        const chosen = given({ leaveAt: old?.leaveAt, day: old?.day });
        return ok([{ ...entry, ...chosen }, ...others].slice(0, RECENTS_MAX));
      });
      if (copy) await unlink(copy.aside).catch(() => {});
      return id;
    } catch {
      // the file opened well: that it will not be remembered is no reason to stop
      return undefined;
    }
  }

  async function keepLeaveAt(of: Source, leaveAt: string | undefined): Promise<Result<undefined>> {
    const kept = await file.update((found) =>
      ok(withLeaveAt(found ?? file.last() ?? NO_RECENTS, of, leaveAt)),
    );
    return kept.ok ? ok(undefined) : kept;
  }

  async function keepDay(of: Source, day: DayPlan | undefined): Promise<Result<undefined>> {
    const kept = await file.update((found) => ok(withDay(found ?? file.last() ?? NO_RECENTS, of, day)));
    return kept.ok ? ok(undefined) : kept;
  }

  return {
    notices: file.notices,
    refresh: file.refresh,
    list,
    find: (id) => entries().find((entry) => entry.id === id),
    add,
    keepLeaveAt,
    leaveAtOf: (drive) => {
      if (drive.kind === 'sample') return file.last()?.sampleLeaves?.[drive.id];
      return entries().find(({ id }) => drive.kind === 'recent' && id === drive.id)?.leaveAt;
    },
    keepDay,
    dayOf: (drive) => {
      if (drive.kind === 'sample') return file.last()?.sampleDays?.[drive.id];
      return entries().find(({ id }) => drive.kind === 'recent' && id === drive.id)?.day;
    },
    async forget(id) {
      const changed = await change((found) => {
        const left = found.filter((entry) => entry.id !== id);
        if (left.length < found.length) return ok(left);
        return fail(
          'no-such-recent',
          'That file is no longer in the list of recent files. Open it from its folder.',
        );
      });
      return changed.ok ? ok(list()) : changed;
    },
  };
}

const NO_RECENTS: RecentsFile = { format: 'lanegauge.recents', version: 1, entries: [] };

function withLeaveAt(kept: RecentsFile, of: Source, leaveAt: string | undefined): RecentsFile {
  if (of.kind === 'sample') {
    const { [of.id]: _, ...others } = kept.sampleLeaves ?? {};
    return { ...kept, sampleLeaves: { ...others, ...(leaveAt === undefined ? {} : { [of.id]: leaveAt }) } };
  }
  const entries = kept.entries.map((entry) => {
    if (of.kind !== 'recent' || entry.id !== of.id) return entry;
    const { leaveAt: _, ...rest } = entry;
    return { ...rest, ...given({ leaveAt }) };
  });
  return { ...kept, entries };
}

function withDay(kept: RecentsFile, of: Source, day: DayPlan | undefined): RecentsFile {
  if (of.kind === 'sample') {
    const { [of.id]: _, ...others } = kept.sampleDays ?? {};
    return { ...kept, sampleDays: { ...others, ...(day === undefined ? {} : { [of.id]: day }) } };
  }
  const entries = kept.entries.map((entry) => {
    if (of.kind !== 'recent' || entry.id !== of.id) return entry;
    const { day: _, ...rest } = entry;
    return { ...rest, ...given({ day }) };
  });
  return { ...kept, entries };
}

interface Copy {
  readonly path: string;
  /** where it waits until it is listed */
  readonly aside: string;
}

/** Copies a file for a name made of its content, so that the same file is kept once. */
async function copyAside(path: string, folder: string): Promise<Copy> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path)) hash.update(chunk);
  const kept = join(folder, hash.digest('hex'));
  const aside = passingName(kept);
  await makeFolders(folder);
  try {
    await copyFile(path, aside);
  } catch (error) {
    await unlink(aside).catch(() => {});
    throw error;
  }
  return { path: kept, aside };
}

/** Deletes copies that have left the list; what still waits to be listed is left alone. */
async function sweepCopies(folder: string, entries: readonly Entry[]): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  const listed = new Set(entries.map(({ path }) => path));
  const left = names
    .filter((name) => /^[0-9a-f]{64}$/.test(name))
    .map((name) => join(folder, name))
    .filter((path) => !listed.has(path));
  await Promise.all(left.map((path) => unlink(path).catch(() => {})));
}
