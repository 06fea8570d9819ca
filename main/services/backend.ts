import { join } from 'node:path';
import { given } from '../../geo/given.ts';
import type { DriveReport } from '../../geo/report/report.ts';
import type { Result } from '../../geo/result.ts';
import type { Settings } from '../contract/settings.ts';
import type { AddedFile } from '../contract/source.ts';
import type { Services } from '../dispatch.ts';
import { createServices, type ServiceParts } from './create-services.ts';
import type { Engine } from './engine/engine.ts';
import { type Pace, REAL_PACE } from './fetch/pace.ts';
import { sweepRegionFiles } from './fetch/region/sweep-region-files.ts';
import { createFetcher } from './fetched/fetcher.ts';
import { readAhead } from './read-ahead.ts';
import { presentSample, sampleFiles } from './samples.ts';
import type { ImportPart } from './shelf/put-on-shelf.ts';
import { sweepShelf } from './shelf/sweep-shelf.ts';
import { shelfFolder } from './shelf/where-shelf.ts';
import { createSources } from './sources.ts';
import { openStores } from './stores.ts';
import { openUploads, type Uploads } from './uploads/uploads.ts';
import { sweepUploads } from './uploads/uploads-folder.ts';
import { createNotifier } from './watch/notifier.ts';

export interface BackendOptions {
  /** where the user's own files lie */
  readonly dataFolder: string;
  /** where the sample lies */
  readonly sampleFolder: string;
  readonly engine: Engine;
  now(): Date;
  readonly heartbeatMs?: number;
  /** judges drives for the grid; in threads where left out */
  readonly judge?: ServiceParts['judge'];
  /** prints a drive sheet; a browser found on this computer where left out */
  readonly printSheet?: ServiceParts['printSheet'];
  /** takes a map file in; the program's own where left out */
  readonly importPart?: ImportPart;
  /** the clock that fetching waits by; the wall's where left out */
  readonly pace?: Pace;
}

/** What lies behind a page, the same under every host: the calls, and what the host itself needs. */
export interface Backend {
  readonly services: Services;
  readonly uploads: Uploads;
  /** A file named by the system or on the command line: the page hears of it. A refusal becomes a notice. */
  openPath(path: string): Promise<Result<AddedFile>>;
  notice(say: string): void;
  /**
   * Checks the sample before a page asks for it, so that the first page comes sooner.
   * @returns undefined where something else was opened before: the page will ask for that
   */
  sampleAhead(): Promise<Result<DriveReport>> | undefined;
  settings(): Settings;
  close(): Promise<void>;
}

/** Its code is loaded when a map is first taken in. */
const importPartLater: ImportPart = async (...asked) => {
  const { importWithWords } = await import('./shelf/import-with-words.ts');
  return importWithWords(...asked);
};

/** Opens everything that is kept for the user and binds the calls to it. */
export async function openBackend(options: BackendOptions): Promise<Backend> {
  const { dataFolder, engine, now } = options;
  engine.warm();
  await sweepUploads();
  const samples = sampleFiles(options.sampleFolder);
  const [sample, stores] = await Promise.all([
    presentSample(samples),
    openStores(dataFolder, samples.vehicles, now),
  ]);
  const uploads = openUploads();
  const sources = createSources(samples, uploads, stores);
  const notifier = createNotifier(options.heartbeatMs);
  const shelf = shelfFolder(dataFolder);
  const importPart = options.importPart ?? importPartLater;
  void sweepShelf(shelf, now().getTime());
  void sweepRegionFiles(join(dataFolder, 'fetch', 'region'), now().getTime());
  const closing = new AbortController();
  const moving = stores.moveDrives();
  return {
    services: createServices({
      engine,
      now,
      sample,
      stores,
      sources,
      notifier,
      shelf,
      dataFolder,
      ...given({ judge: options.judge, printSheet: options.printSheet }),
      importPart,
      fetcher: createFetcher({ shelf, importPart, now, dataFolder, pace: options.pace ?? REAL_PACE }),
    }),
    uploads,
    settings: stores.settings.current,
    notice: notifier.notice,
    sampleAhead() {
      const map = samples.find(sample.map);
      const drive = samples.find(sample.defaultDrive);
      const vehicle = stores.fleet.current().find(({ id }) => id === sample.defaultVehicle)?.card;
      if (stores.recents.list().length > 0 || !map || !drive || !vehicle) return undefined;
      const made = now().toISOString();
      return readAhead(engine, { map, drive, vehicle, country: sample.country, made }, closing.signal);
    },
    async openPath(path) {
      const added = await uploads.addPath(path);
      if (added.ok) notifier.opened(added.value);
      else notifier.notice(added.error.message);
      return added;
    },
    async close() {
      closing.abort();
      await Promise.all([engine.close(), uploads.close(), moving]);
    },
  };
}
