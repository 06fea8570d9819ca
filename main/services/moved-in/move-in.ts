import { z } from 'zod';
import { given } from '../../../geo/given.ts';
import { itemOfVehicle } from '../../../geo/library/record-name.ts';
import { ok, type Result } from '../../../geo/result.ts';
import type { FleetVehicle } from '../../contract/fleet.ts';
import { GPX_MAX_BYTES } from '../../contract/limits.ts';
import type { VehicleLoad } from '../../contract/loads.ts';
import { readBytes } from '../files/read-bytes.ts';
import { type RememberedFile, rememberedFile } from '../files/remembered-file.ts';
import { sha256Of } from '../files/sha256.ts';
import { beginFleet } from '../fleet/fleet-store.ts';
import { addDrives } from '../library/add-drives.ts';
import type { Library } from '../library/library.ts';
import type { Recents } from '../recents/recents-store.ts';
import { formerFleet, formerLoads } from './former-files.ts';

const WHAT = ['fleet', 'loads', 'drives'] as const;

const doneSchema = z.strictObject({
  format: z.literal('lanegauge.moved-in'),
  version: z.literal(1),
  done: z.array(z.enum(WHAT)),
});
type Done = z.infer<typeof doneSchema>;

/** What was kept before there was a library, and has moved into it or could not. */
export interface MovedIn {
  /** what a fleet begins with where the library has no vehicle */
  readonly vehicles: readonly FleetVehicle[] | undefined;
  readonly loads: readonly VehicleLoad[];
  readonly notices: readonly string[];
  /** Moves the drives opened last, once; it reads them all, and nobody has to wait for it. */
  moveDrives(recents: Recents): Promise<void>;
}

/**
 * Moves the fleet and the loads of before into the library, once; the files stay as they are. Killed in between, it
 * does the same again and makes the same records. What cannot be moved is shown from its file, and tried again at the
 * next start.
 */
export async function moveIn(dataFolder: string, library: Library, now: () => Date): Promise<MovedIn> {
  const marks = await rememberedFile({
    folder: dataFolder,
    name: 'moved-in.json',
    what: 'list of what has moved into the library',
    schema: doneSchema,
    now,
  });
  const isDone = (what: (typeof WHAT)[number]) => marks.last()?.done.includes(what) ?? false;
  let notices = marks.notices();
  let vehicles: readonly FleetVehicle[] | undefined;
  let loads: readonly VehicleLoad[] = [];
  if (!isDone('fleet')) {
    const former = await formerFleet(dataFolder, now);
    notices = [...notices, ...former.notices];
    vehicles = former.value;
    // an emptied fleet leaves no record behind, so its file goes on telling that it is empty
    if (vehicles && vehicles.length > 0) await settle(marks, 'fleet', await beginFleet(library, vehicles));
  }
  if (!isDone('loads')) {
    const nameOf = (id: string) => vehicles?.find((vehicle) => vehicle.id === id)?.card.name;
    const former = await formerLoads(dataFolder, now, nameOf);
    notices = [...notices, ...former.notices];
    loads = former.value ?? [];
    if (former.value) await settle(marks, 'loads', await moveLoads(library, loads));
  }
  return {
    vehicles,
    loads: isDone('loads') ? [] : loads,
    notices,
    async moveDrives(recents) {
      if (isDone('drives')) return;
      const drives = recents.list().filter(({ use }) => use === 'drive');
      // marked where there are none, too: those opened later are no drives of before
      await settle(marks, 'drives', await moveDrives(library, recents, drives));
    },
  };
}

/** Marks what has been moved; what could not be stays to be tried again. */
async function settle(
  marks: RememberedFile<Done>,
  what: (typeof WHAT)[number],
  moved: Result<unknown>,
): Promise<void> {
  if (!moved.ok) return;
  await marks.update((found) =>
    ok({ format: 'lanegauge.moved-in', version: 1, done: [...new Set([...(found?.done ?? []), what])] }),
  );
}

async function moveLoads(library: Library, loads: readonly VehicleLoad[]): Promise<Result<unknown>> {
  for (const { vehicleId, items } of loads) {
    const id = itemOfVehicle('load', vehicleId, sha256Of);
    if (items.length === 0 || library.find('load', id)) continue;
    const body = { vehicleId, items };
    const put = await library.put({ kind: 'load', id, body, over: [], made: '' });
    if (!put.ok) return put;
  }
  return ok(undefined);
}

async function moveDrives(
  library: Library,
  recents: Recents,
  drives: ReturnType<Recents['list']>,
): Promise<Result<unknown>> {
  for (const { id, name, leaveAt } of drives) {
    const path = recents.find(id)?.path;
    if (path === undefined) continue;
    const bytes = await readBytes(path, 'drive', GPX_MAX_BYTES);
    // what is gone or is no drive any more stays in the list it was in
    if (!bytes.ok) continue;
    const added = await addDrives(library, { bytes: bytes.value, name, made: '', ...given({ leaveAt }) });
    if (!added.ok && added.error.code === 'not-saved') return added;
  }
  return ok(undefined);
}
