import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { DEFAULT_SETTINGS } from '../../../main/contract/default-settings.ts';
import type { Source } from '../../../main/contract/source.ts';
import { createDispatch } from '../../../main/dispatch.ts';
import { openBackend } from '../../../main/services/backend.ts';
import type { Engine } from '../../../main/services/engine/engine.ts';
import { createHandlers } from '../../../main/services/engine/handlers.ts';
import { COACH_BUILT } from '../../main/contract/cards.ts';
import { samplePath } from '../make/samples.ts';

/** Two roads in a row, the second under 2.5 m. */
export const MAP = `<osm version="0.6"><node id="1" lat="50" lon="7"/><node id="2" lat="50" lon="7.01"/><node id="3" lat="50" lon="7.02"/>
<way id="1"><nd ref="1"/><nd ref="2"/><tag k="highway" v="residential"/></way>
<way id="2"><nd ref="2"/><nd ref="3"/><tag k="highway" v="residential"/><tag k="maxheight" v="2.5"/></way></osm>`;
const DRIVE = `<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>
<trkpt lat="50" lon="7.001"/><trkpt lat="50" lon="7.01"/><trkpt lat="50" lon="7.019"/></trkseg></trk></gpx>`;

/** The engine's work without its thread. */
function engineHere(): Engine {
  const handlers = createHandlers();
  return {
    warm: () => {},
    // each name goes with its own request
    ask: (name, request, hooks) =>
      (handlers[name] as (r: unknown, h: unknown) => never)(request, { ...hooks, lookUp: () => {} }),
    close: async () => {},
  };
}

/** The whole program behind a window, with a small map and a drive open, and requests that it answers. */
export async function openProgram() {
  const folder = await mkdtemp(join(tmpdir(), 'lanegauge-fuzz-'));
  const logged: unknown[] = [];
  const backend = await openBackend({
    host: 'browser',
    dataFolder: join(folder, 'data'),
    sampleFolder: samplePath(''),
    engine: engineHere(),
    now: () => new Date('2026-05-01T09:00:00Z'),
    heartbeatMs: 60_000,
  });
  const dispatch = createDispatch(backend.services, (error) => logged.push(error));
  const give = async (name: string, text: string): Promise<Source> => {
    const added = await backend.uploads.addStream(name, Readable.from([Buffer.from(text)]));
    if (!added.ok) throw new Error(added.error.message);
    return added.value.source;
  };
  const [map, drive] = [await give('map.osm', MAP), await give('drive.gpx', DRIVE)];
  const hooks = { onProgress: () => {}, signal: new AbortController().signal };
  await dispatch('openMap', { source: map }, hooks);
  const opened = await dispatch('openDrive', { source: drive }, hooks);
  if (!opened.ok) throw new Error(opened.error.message);
  const { driveId } = opened.value as { driveId: string };
  return {
    backend,
    dispatch,
    logged,
    sound: soundRequests(driveId, map, drive),
  };
}

export type Program = Awaited<ReturnType<typeof openProgram>>;
export type Asked = readonly [name: string, request: unknown];

function soundRequests(driveId: string, map: Source, drive: Source): Asked[] {
  const load = { format: 'lanegauge.load', version: 1, items: [{ name: 'Crate', massKg: 30, xM: 4 }] };
  return [
    ['describe', {}],
    ['openMap', { source: map }],
    ['openDrive', { source: drive, track: 1 }],
    ['check', { driveId, vehicle: COACH_BUILT, load, leaveAt: '2027-06-12T09:30', country: 'DE' }],
    ['check', { driveId, vehicle: COACH_BUILT }],
    ['tile', { z: 14, x: 8510, y: 5560 }],
    ['strip', { driveId }],
    ['saveVehicles', { vehicles: [{ id: 'heron', card: COACH_BUILT }] }],
    ['saveLoad', { vehicleId: 'heron', load }],
    ['readLoad', { name: 'load.json', text: JSON.stringify(load) }],
    ['saveNote', { fields: { at: { lat: 50, lon: -0.5 }, say: 'Low arch', heightM: 2.9, by: 'AB' } }],
    ['yard', {}],
    ['changeDrive', { id: 'drive-0123456789abcdef-1', over: [], name: 'Coast' }],
    ['restoreItem', { id: 'drive-0123456789abcdef-1' }],
    [
      'acceptChanges',
      { pairs: [{ drive: 'drive-0123456789abcdef-1', vehicle: 'heron' }], by: 'AB', on: '2027-06-12' },
    ],
    ['importNotes', { name: 'notes.geojson', text: '{"type":"FeatureCollection","features":[]}' }],
    ['saveSettings', { settings: DEFAULT_SETTINGS }],
    ['forgetRecent', { id: 'abcdefgh' }],
  ];
}
