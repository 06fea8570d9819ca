import { driveName } from '../../geo/library/body/drive.ts';
import { fail, ok, type Result } from '../../geo/result.ts';
import type { FleetVehicle } from '../contract/fleet.ts';
import { GPX_MAX_BYTES } from '../contract/limits.ts';
import type { Settings } from '../contract/settings.ts';
import type { Yard, YardCell } from '../contract/yard/yard.ts';
import type { Services } from '../dispatch.ts';
import { readBytes } from './files/read-bytes.ts';
import { addDrives } from './library/add-drives.ts';
import type { Library } from './library/library.ts';
import type { Sources } from './sources.ts';
import { acknowledge } from './yard/acknowledge.ts';
import { changeDrive } from './yard/change-drive.ts';
import { drivesNear } from './yard/drives-near.ts';
import { type GridCell, judgeGrid, tellKnown } from './yard/grid/grid.ts';
import { showYard } from './yard/show-yard.ts';
import { gridOfLibrary } from './yard/yard-of.ts';

export interface YardParts {
  readonly stores: {
    readonly library: Library;
    readonly settings: { current(): Settings };
    readonly fleet: { current(): readonly FleetVehicle[] };
  };
  readonly sources: Pick<Sources, 'find'>;
  readonly dataFolder: string;
  now(): Date;
  /** judges drives; in threads where left out */
  readonly judge?: Parameters<typeof judgeGrid>[3];
}

type YardServices = Pick<
  Services,
  | 'yard'
  | 'yardCells'
  | 'judgeYard'
  | 'drivesNear'
  | 'addToYard'
  | 'changeDrive'
  | 'removeDrive'
  | 'restoreItem'
  | 'chooseVersion'
  | 'acceptChanges'
>;

/** The window's calls about the yard. */
export function yardCalls(parts: YardParts): YardServices {
  const { sources, dataFolder, now, judge } = parts;
  const { library, settings, fleet } = parts.stores;
  const grid = () =>
    gridOfLibrary({ library, settings: settings.current(), fleet: fleet.current(), dataFolder, now });
  const show = () => showYard(library, { fleet: fleet.current(), units: settings.current().units });
  let turn: Promise<unknown> = Promise.resolve();
  return {
    ...changingCalls(library, show),
    async yard() {
      await library.refresh();
      return ok(await show());
    },
    async yardCells(_, { onProgress, signal }) {
      const gathered = inHandfuls((cells) => onProgress({ cells }));
      await tellKnown(grid(), gathered.add, signal);
      gathered.end();
      return ok({});
    },
    async judgeYard({ which }, { onProgress, signal }) {
      const judged = turn.then(async () => {
        if (signal.aborted) return fail('cancelled', 'Cancelled.');
        const hooks = {
          signal,
          hear(news: Parameters<Parameters<typeof judgeGrid>[2]['hear']>[0]) {
            onProgress(news.kind === 'cell' ? { kind: 'cells', cells: [shown(news.cell)] } : news);
          },
        };
        return judgeGrid(grid(), which, hooks, judge);
      });
      // one that fails must not keep the next from its turn
      turn = judged.catch(() => {});
      const done = await judged;
      return done.ok ? ok({ judged: done.value }) : done;
    },
    async drivesNear(about, { onProgress, signal }) {
      const { drives, kept } = grid();
      const near = await drivesNear({ library, drives, kept }, about, {
        signal,
        onProgress: (share) => onProgress({ share }),
      });
      return near.ok ? ok({ drives: [...near.value.drives], unread: [...near.value.unread] }) : near;
    },
    async addToYard({ source }) {
      const file = sources.find(source);
      if (!file.ok) return file;
      const bytes = await readBytes(file.value.path, 'drive', GPX_MAX_BYTES);
      if (!bytes.ok) return bytes;
      const added = await addDrives(library, { bytes: bytes.value, name: file.value.name });
      if (!added.ok) return added;
      return ok({
        drives: added.value.map(({ item: { id, versions }, was }) => {
          const [version] = versions;
          return { id, name: version ? driveName(version.body) : id, was };
        }),
      });
    },
    async acceptChanges({ pairs, by, on }) {
      const done = await acknowledge({ library, grid: grid() }, pairs, { by, on });
      return done.ok ? ok({}) : done;
    },
  };
}

/** The calls that change an item of the library; each answers with what is there then. */
function changingCalls(
  library: Library,
  show: () => Promise<Yard>,
): Pick<Services, 'changeDrive' | 'removeDrive' | 'restoreItem' | 'chooseVersion'> {
  const after = async (done: Result<unknown>) => (done.ok ? ok(await show()) : done);
  return {
    async changeDrive({ id, over, ...change }) {
      return after(await changeDrive(library, id, change, over));
    },
    async removeDrive({ id, over }) {
      return after(await library.remove({ kind: 'drive', id, heads: over }));
    },
    async restoreItem({ id }) {
      return after(await library.restore(id));
    },
    async chooseVersion({ id, version }) {
      return after(await library.choose(id, version));
    },
  };
}

function shown({ drive, vehicle, cell, stale, changes }: GridCell): YardCell {
  return {
    drive,
    vehicle,
    cell,
    stale: [...stale],
    changes: changes.map(({ kind, finding, say }) => ({ kind, finding, say })),
  };
}

const HANDFUL = 250;

/** Cells come drive by drive; each message costs more than a few cells more in it. */
function inHandfuls(send: (cells: YardCell[]) => void) {
  let held: YardCell[] = [];
  const end = () => {
    if (held.length > 0) send(held);
    held = [];
  };
  return {
    add(cells: readonly GridCell[]) {
      for (const cell of cells) held.push(shown(cell));
      if (held.length >= HANDFUL) end();
    },
    end,
  };
}
