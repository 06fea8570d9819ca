import { join } from 'node:path';
import type { Source } from '../../../main/contract/source.ts';
import { COACH_BUILT } from '../../support/coach-built.ts';
import type { BehindWindow } from '../../support/served-window.ts';
import { writeVersion } from '../../support/shelf/two-maps.ts';

/** How often a round does what. */
export const A_ROUND = { drives: 20, checks: 200, tiles: 60, shelfUpdates: 1 } as const;

const DRIVES = ['barred', 'clear', 'everything', 'recorded', 'sparse'];
/** What of a drive's answer is used further. */
interface Answered {
  readonly driveId: string;
  readonly notes: readonly { readonly id: string; readonly heads: readonly string[] }[];
}

/** What a week of work asks of the program, in small: drives opened and checked, maps replaced, notes, a grid, a sheet. */
export async function programRound(
  { backend, dispatch, folder }: BehindWindow,
  round: number,
): Promise<void> {
  const signal = new AbortController().signal;
  const ask = async (name: string, request: unknown): Promise<Answered> => {
    const reply = await dispatch(name, request, { onProgress: () => {}, signal });
    if (!reply.ok) throw new Error(`${name}: ${reply.error.message}`);
    return reply.value as Answered;
  };
  const give = async (path: string): Promise<Source> => {
    const added = await backend.uploads.addPath(path);
    if (!added.ok) throw new Error(added.error.message);
    return added.value.source;
  };
  for (let drive = 0; drive < A_ROUND.drives; drive++) {
    const source = await give(join('sample-routes', 'drives', `${DRIVES[drive % DRIVES.length]}.gpx`));
    const { driveId } = await ask('openDrive', { source });
    for (let check = 0; check < A_ROUND.checks / A_ROUND.drives; check++)
      await ask('check', {
        driveId,
        vehicle: { ...COACH_BUILT, heightM: 2.5 + check / 10 },
        country: 'GB',
        ...(check % 2 === 0 ? { leaveAt: `2027-06-1${check}T09:30` } : {}),
      });
    await ask('strip', { driveId });
    if (drive === 0) await handOver(driveId, ask);
    if (drive === 0) await ask('addToYard', { source });
  }
  for (let tile = 0; tile < A_ROUND.tiles; tile++)
    await ask('tile', { z: 12, x: (2048 + tile + round) % 4096, y: 1300 + (tile % 8) });
  const map = await give(writeVersion(folder, round));
  await ask('importMap', { source: map, name: 'Vale' });
  await ask('judgeYard', { which: 'all' });
  await takeNote(ask);
}

type Ask = (name: string, request: unknown) => Promise<Answered>;

async function handOver(driveId: string, ask: Ask): Promise<void> {
  const check = { driveId, vehicle: COACH_BUILT, country: 'GB' };
  await ask('wayRound', check);
  await ask('handOver', { ...check, evenBarred: true });
}

async function takeNote(ask: Ask): Promise<void> {
  const fields = { at: { lat: 54, lon: 9.003 }, say: 'Low arch', heightM: 2.9, by: 'AB' };
  const { notes } = await ask('saveNote', { fields });
  for (const { id, heads } of notes) await ask('removeNote', { id, over: heads });
}
