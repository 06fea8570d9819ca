import { fail, ok, type Result } from '../../geo/result.ts';
import type { Source } from '../contract/source.ts';
import type { Services } from '../dispatch.ts';
import type { Engine } from './engine/engine.ts';
import { readDriveFile } from './engine/read-drive-file.ts';
import type { Fetcher } from './fetched/fetcher.ts';
import type { DriveToFetch } from './fetched/wanted.ts';
import type { Sources } from './sources.ts';
import type { Stores } from './stores.ts';

interface Parts {
  readonly shelf: string;
  readonly engine: Engine;
  readonly sources: Sources;
  readonly stores: Pick<Stores, 'settings'>;
  readonly fetcher: Fetcher;
}

/** The window's calls about fetching maps. The addresses are those of the settings. */
export function fetchCalls(parts: Parts): Pick<Services, 'planFetch' | 'fetchMap'> {
  const { shelf, engine, stores, fetcher } = parts;
  const serverFor = (by: 'line' | 'region') => stores.settings.current().servers[by];
  return {
    async planFetch({ source, track, by }) {
      const drive = await driveOf(parts.sources, source, track);
      return drive.ok ? fetcher.plan(drive.value, by, serverFor(by)) : drive;
    },
    async fetchMap({ source, track, by, step, keepFiles = false }, hooks) {
      const drive = await driveOf(parts.sources, source, track);
      if (!drive.ok) return drive;
      const server = serverFor(by);
      // what a map replaces stays open, so that it can be compared with the new one
      await engine.ask('holdShelf', { shelf }, hooks);
      if (by === 'line') return fetcher.take(drive.value, { by, server }, hooks);
      if (step === undefined)
        return fail('bad-request', 'No step of fetching by region is named. Ask for the plan again.');
      return fetcher.take(drive.value, { by, step, keepFiles, server }, hooks);
    },
  };
}

/** One track of the file, or all of them where none is chosen. */
async function driveOf(
  sources: Sources,
  source: Source,
  track: number | undefined,
): Promise<Result<DriveToFetch>> {
  const file = sources.find(source);
  if (!file.ok) return file;
  const read = await readDriveFile(file.value);
  if (!read.ok) return read;
  const { routes } = read.value;
  const chosen = track === undefined ? routes : routes.slice(track - 1, track);
  const segments = chosen.flatMap((route) => route.segments);
  if (segments.length === 0)
    return fail('route.unknown', 'There is no such track in the drive. Choose another.');
  const name = chosen.find((route) => route.name !== '')?.name ?? file.value.name;
  return ok({ name, route: { segments } });
}
