import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { fail } from '../../../geo/result.ts';
import { CALLS } from '../../../main/contract/calls.ts';
import { DEFAULT_SETTINGS } from '../../../main/contract/default-settings.ts';
import type { Source } from '../../../main/contract/source.ts';
import { createDispatch } from '../../../main/dispatch.ts';
import { openBackend } from '../../../main/services/backend.ts';
import type { Engine } from '../../../main/services/engine/engine.ts';
import { createHandlers } from '../../../main/services/engine/handlers.ts';
import { COACH_BUILT } from '../../main/contract/cards.ts';
import { fastPace } from '../../support/map-server/fast-pace.ts';
import { importByHand } from '../../support/shelf/import-by-hand.ts';
import { judgeHere } from '../../support/shelf/judge-here.ts';
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
    dataFolder: join(folder, 'data'),
    sampleFolder: samplePath(''),
    engine: engineHere(),
    now: () => new Date('2026-05-01T09:00:00Z'),
    heartbeatMs: 60_000,
    judge: judgeHere,
    importPart: importByHand,
    printSheet: async () => fail('sheet.no-browser', 'There is no browser here.'),
    pace: fastPace(),
  });
  const dispatch = createDispatch(backend.services, (error) => logged.push(error));
  const give = async (name: string, text: string): Promise<Source> => {
    const added = await backend.uploads.addStream(name, Readable.from([Buffer.from(text)]));
    if (!added.ok) throw new Error(added.error.message);
    return added.value.source;
  };
  const [map, drive] = [await give('map.osm', MAP), await give('drive.gpx', DRIVE)];
  const hooks = { onProgress: () => {}, signal: new AbortController().signal };
  const ask = async (name: string, request: unknown) => {
    const reply = await dispatch(name, request, hooks);
    if (!reply.ok) throw new Error(`${name}: ${reply.error.message}`);
    // the contract's tests hold each answer to its schema
    return reply.value as {
      driveId: string;
      drives: { id: string }[];
      notes: { id: string; heads: string[] }[];
    };
  };
  await ask('importMap', { source: map, name: 'Vale' });
  await ask('saveVehicles', { vehicles: [{ id: 'heron', card: COACH_BUILT }] });
  const [added] = (await ask('addToYard', { source: drive })).drives;
  const [note] = (await ask('saveNote', { fields: NOTE })).notes;
  const names = { map, drive, inYard: added?.id ?? '', note: note?.id ?? '', heads: note?.heads ?? [] };
  let sound: Asked[] = [];
  /** Opens map and drive: whoever opens another map closes the drives on the one before. */
  const open = async () => {
    await ask('openMap', { source: map });
    const { driveId } = await ask('openDrive', { source: drive });
    sound = soundRequests({ ...names, driveId });
  };
  await open();
  return { backend, dispatch, logged, open, sound: () => sound };
}

export type Program = Awaited<ReturnType<typeof openProgram>>;
export type Asked = readonly [name: string, request: unknown];

/** What requests name. */
interface Names {
  readonly driveId: string;
  readonly map: Source;
  readonly drive: Source;
  /** ids in the library */
  readonly inYard: string;
  readonly note: string;
  readonly heads: readonly string[];
}

/** A request of each call that is answered, or refused for want of what it names. */
function soundRequests(names: Names): Asked[] {
  const requests = { ...opening(names), ...keeping(names), ...ofTheYard(names), ...onTheShelf(names) };
  const left = Object.keys(CALLS).filter((name) => !(name in requests));
  if (left.length > 0) throw new Error(`no request for ${left.join(', ')}`);
  return Object.entries(requests);
}

const LOAD = { format: 'lanegauge.load', version: 1, items: [{ name: 'Crate', massKg: 30, xM: 4 }] };
const NOTE = { at: { lat: 50, lon: 7.015 }, say: 'Low arch', heightM: 2.9, by: 'AB' };
const DAY = {
  stops: [{ name: 'Mill', lat: 50, lon: 7.01, stayMin: 20, services: ['cassette'] }],
  homeBy: '2027-06-12T17:00',
};

function opening({ driveId, map, drive }: Names) {
  const check = { driveId, vehicle: COACH_BUILT };
  return {
    describe: {},
    watch: {},
    openMap: { source: map, about: drive },
    openDrive: { source: drive, track: 1 },
    check: { ...check, load: LOAD, leaveAt: '2027-06-12T09:30', country: 'DE', day: DAY },
    tile: { z: 14, x: 8510, y: 5560 },
    strip: { driveId },
    wayRound: { ...check, past: ['x'], prefer: 'widest' },
    takeWay: {
      driveId,
      fromM: 100,
      toM: 900,
      path: [
        [50, 7.002],
        [50, 7.01],
      ],
    },
    planDrive: {
      vehicle: COACH_BUILT,
      places: [
        { lat: 50, lon: 7.001 },
        { lat: 50, lon: 7.009, stop: true },
      ],
      name: 'Coast',
    },
    services: { ...check, wanted: ['fuel'] },
    findPlaces: { text: 'Mi', near: { lat: 50, lon: 7 } },
    handOver: { ...check, evenBarred: true },
    keepLeaveAt: { driveId, leaveAt: '2027-06-12T09:30' },
    keepDay: { driveId, day: DAY },
    mapChanges: { vehicle: COACH_BUILT, country: 'DE' },
  };
}

function keeping({ note, heads }: Names) {
  return {
    saveVehicles: { vehicles: [{ id: 'heron', card: COACH_BUILT }] },
    saveLoad: { vehicleId: 'heron', load: LOAD },
    readLoad: { name: 'load.json', text: JSON.stringify(LOAD) },
    saveSettings: { settings: DEFAULT_SETTINGS },
    forgetRecent: { id: 'abcdefgh' },
    rememberDrives: { sources: [{ kind: 'sample', id: 'clear' }] },
    notes: {},
    saveNote: { id: note, over: heads, fields: NOTE },
    removeNote: { id: note, over: heads },
    importNotes: { name: 'notes.geojson', text: '{"type":"FeatureCollection","features":[]}' },
    exportNotes: { as: 'for mappers' },
  };
}

function ofTheYard({ drive, inYard, heads }: Names) {
  const pair = { drive: inYard, vehicle: 'vehicle-heron' };
  return {
    yard: {},
    yardCells: {},
    judgeYard: { which: 'stale' },
    drivesNear: { lat: 50, lon: 7, radiusM: 5000 },
    addToYard: { source: drive },
    changeDrive: { id: inYard, over: heads, name: 'Coast', leaveAt: null },
    removeDrive: { id: inYard, over: heads },
    restoreItem: { id: inYard },
    chooseVersion: { id: inYard, version: heads[0] },
    acceptChanges: { pairs: [pair], by: 'AB', on: '2027-06-12' },
    handOverPairs: { pairs: [pair], evenBarred: true },
    visorCards: {},
    handedSheet: { number: 'K7QM-4XPD' },
    sheetsOut: {},
    sheetBack: { number: 'K7QM-4XPD', back: true },
    worseThanSheet: { number: 'K7QM-4XPD' },
  };
}

function onTheShelf({ map, drive }: Names) {
  return {
    shelf: {},
    importMap: { source: map, name: 'Vale' },
    verifyMap: { name: 'Vale', repair: true },
    planFetch: { source: drive, track: 1, by: 'line' },
    fetchMap: { source: drive, track: 1, by: 'region', step: 'index', keepFiles: true },
    removeMap: { name: 'Vale' },
  };
}
