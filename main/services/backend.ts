import type { Result } from '../../geo/result.ts';
import type { Settings } from '../contract/settings.ts';
import type { AddedFile } from '../contract/source.ts';
import type { Services } from '../dispatch.ts';
import { createServices } from './create-services.ts';
import type { Engine } from './engine/engine.ts';
import { presentSample, sampleFiles } from './samples.ts';
import { createSources } from './sources.ts';
import { openStores } from './stores.ts';
import { openUploads, type Uploads } from './uploads/uploads.ts';
import { sweepUploads } from './uploads/uploads-folder.ts';
import { createNotifier } from './watch/notifier.ts';

export interface BackendOptions {
  readonly host: 'window' | 'browser';
  /** where the user's own files lie */
  readonly dataFolder: string;
  /** where the sample lies */
  readonly sampleFolder: string;
  readonly engine: Engine;
  now(): Date;
  readonly heartbeatMs?: number;
}

/** What lies behind a page, the same under every host: the calls, and what the host itself needs. */
export interface Backend {
  readonly services: Services;
  readonly uploads: Uploads;
  /** A file named by the system or on the command line: the page hears of it. A refusal becomes a notice. */
  openPath(path: string): Promise<Result<AddedFile>>;
  notice(say: string): void;
  settings(): Settings;
  close(): Promise<void>;
}

/** Opens everything that is kept for the user and binds the calls to it. */
export async function openBackend(options: BackendOptions): Promise<Backend> {
  const { host, dataFolder, engine, now } = options;
  engine.warm();
  await sweepUploads();
  const samples = sampleFiles(options.sampleFolder);
  const [sample, stores] = await Promise.all([
    presentSample(samples),
    openStores(dataFolder, samples.vehicles, now),
  ]);
  const uploads = openUploads();
  const sources = createSources(samples, uploads, stores.recents);
  const notifier = createNotifier(options.heartbeatMs);
  return {
    services: createServices({ host, engine, now, sample, stores, sources, notifier }),
    uploads,
    settings: stores.settings.current,
    notice: notifier.notice,
    async openPath(path) {
      const added = await uploads.addPath(path);
      if (added.ok) notifier.opened(added.value);
      else notifier.notice(added.error.message);
      return added;
    },
    async close() {
      await Promise.all([engine.close(), uploads.close()]);
    },
  };
}
