import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createDispatch } from '../../../main/dispatch.ts';
import { openBackend } from '../../../main/services/backend.ts';
import { COACH_BUILT, PANEL_VAN } from './cards.ts';
import { fakeEngine } from './fake-engine.ts';

export const GPX = `<?xml version="1.0"?><gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">
<trk><name>Weir Lane</name><trkseg><trkpt lat="50" lon="-1"/><trkpt lat="50.009" lon="-1"/></trkseg></trk></gpx>`;

/** A program with its folders and a stand-in for the reading of maps. */
export async function makeWorld(heartbeatMs = 20) {
  const folder = await mkdtemp(join(tmpdir(), 'lanegauge-test-'));
  const dataFolder = join(folder, 'data');
  const sampleFolder = join(folder, 'sample');
  await mkdir(join(sampleFolder, 'vehicles'), { recursive: true });
  await mkdir(join(sampleFolder, 'drives'));
  await writeFile(join(sampleFolder, 'vehicles', 'coach-built-7.4.json'), JSON.stringify(COACH_BUILT));
  await writeFile(join(sampleFolder, 'vehicles', 'panel-van-6.0.json'), JSON.stringify(PANEL_VAN));
  await writeFile(join(sampleFolder, 'drives', 'barred.gpx'), GPX);
  const engine = fakeEngine();
  const logged: unknown[] = [];
  const backend = await openBackend({
    dataFolder,
    sampleFolder,
    engine,
    now: () => new Date('2026-05-01T09:00:00Z'),
    heartbeatMs,
  });
  const dispatch = createDispatch(backend.services, (error) => logged.push(error));
  return {
    folder,
    dataFolder,
    sampleFolder,
    engine,
    logged,
    backend,
    dispatch,
    async close() {
      await backend.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

export type World = Awaited<ReturnType<typeof makeWorld>>;
