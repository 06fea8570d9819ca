import { randomUUID } from 'node:crypto';
import { given } from '../../geo/given.ts';
import { readLoad } from '../../geo/load/list/read-load.ts';
import { ok, type Result } from '../../geo/result.ts';
import type { Settings } from '../contract/settings.ts';
import type { AddedFile } from '../contract/source.ts';
import type { Services } from '../dispatch.ts';
import { PROGRAM } from '../version.ts';
import type { Engine } from './engine/engine.ts';
import { openFleet } from './fleet/fleet-store.ts';
import { readSampleFleet } from './fleet/sample-fleet.ts';
import { openLoads } from './loads/loads-store.ts';
import { openRecents } from './recents/recents-store.ts';
import { presentSample, sampleFiles } from './samples.ts';
import { openSettings } from './settings/settings-store.ts';
import { createSources } from './sources.ts';
import { openUploads, type Uploads } from './uploads/uploads.ts';
import { createNewsroom } from './watch/newsroom.ts';

export interface ServicesOptions {
  readonly host: 'window' | 'browser';
  /** where the user's own files lie */
  readonly dataFolder: string;
  /** where the sample lies */
  readonly sampleFolder: string;
  readonly engine: Engine;
  now(): Date;
  readonly heartbeatMs?: number;
}

/** What a host holds besides the calls themselves. */
export interface House {
  readonly services: Services;
  readonly uploads: Uploads;
  /** A file named by the system or on the command line: the page hears of it. A refusal becomes a notice. */
  openPath(path: string): Promise<Result<AddedFile>>;
  notice(say: string): void;
  settings(): Settings;
  close(): Promise<void>;
}

/** Opens everything that is kept for the user and binds the calls to it. */
export async function openHouse(options: ServicesOptions): Promise<House> {
  const { host, dataFolder, engine, now } = options;
  engine.warm();
  const samples = sampleFiles(options.sampleFolder);
  const [sample, sampleFleet] = await Promise.all([
    presentSample(samples),
    readSampleFleet(samples.vehicles),
  ]);
  const [settings, fleet, recents] = await Promise.all([
    openSettings(dataFolder, now),
    openFleet(dataFolder, sampleFleet.vehicles, now),
    openRecents(dataFolder, now),
  ]);
  const loads = await openLoads(dataFolder, fleet.current(), now);
  const uploads = openUploads();
  const sources = createSources(samples, uploads, recents);
  const newsroom = createNewsroom(options.heartbeatMs);
  const notices = [sampleFleet, settings, fleet, loads, recents].flatMap((each) => [...each.notices]);

  const services: Services = {
    describe: async () =>
      ok({
        program: PROGRAM,
        host,
        capabilities: { openedFiles: host === 'window', pathsRemembered: host === 'window' },
        settings: settings.current(),
        vehicles: [...fleet.current()],
        loads: [...loads.current()],
        recents: recents.list(),
        sample,
        opened: newsroom.takeWaiting(),
        notices,
      }),

    async openMap({ source, about }, hooks) {
      const file = sources.find(source);
      if (!file.ok) return file;
      const drive = about === undefined ? undefined : sources.find(about);
      if (drive && !drive.ok) return drive;
      const opened = await engine.ask(
        'openMap',
        { file: file.value, ...given({ about: drive?.value }) },
        hooks,
      );
      if (opened.ok) await sources.remember(source, 'map');
      return opened;
    },

    async openDrive({ source, track }, hooks) {
      const file = sources.find(source);
      if (!file.ok) return file;
      const opened = await engine.ask(
        'openDrive',
        { driveId: randomUUID(), file: file.value, ...given({ track }) },
        hooks,
      );
      if (opened.ok) await sources.remember(source, 'drive');
      return opened;
    },

    check: (request, hooks) => engine.ask('check', { ...request, made: now().toISOString() }, hooks),

    tile: (request, hooks) => engine.ask('tile', request, hooks),
    strip: (request, hooks) => engine.ask('strip', request, hooks),

    async saveVehicles({ vehicles }) {
      const saved = await fleet.save(vehicles);
      return saved.ok ? ok({ vehicles: [...saved.value] }) : saved;
    },

    async saveLoad({ vehicleId, load }) {
      const saved = await loads.save(vehicleId, load.items);
      return saved.ok ? ok({}) : saved;
    },

    readLoad: async ({ name, text }) => readLoad(text, name),

    async saveSettings(request) {
      const saved = await settings.save(request.settings);
      return saved.ok ? ok({ settings: saved.value }) : saved;
    },

    async forgetRecent({ id }) {
      const left = await recents.forget(id);
      return left.ok ? ok({ recents: left.value }) : left;
    },

    async watch(_, { onProgress, signal }) {
      await newsroom.watch(onProgress, signal);
      return ok({});
    },
  };

  return {
    services,
    uploads,
    settings: settings.current,
    notice: newsroom.notice,
    async openPath(path) {
      const added = await uploads.addPath(path);
      if (added.ok) newsroom.opened(added.value);
      else newsroom.notice(added.error.message);
      return added;
    },
    async close() {
      await Promise.all([engine.close(), uploads.close()]);
    },
  };
}
