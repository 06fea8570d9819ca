import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { Roads, Tags } from '../../../../geo/roads/roads.ts';
import { CALLS } from '../../../../main/contract/calls.ts';
import { createHandlers } from '../../../../main/services/engine/handlers.ts';
import { importPart } from '../../../../main/services/shelf/import/import-part.ts';
import { runHere } from '../../../../main/services/shelf/import/runner.ts';
import type { ImportPart } from '../../../../main/services/shelf/put-on-shelf.ts';
import { importMap } from '../../../../main/services/shelf/shelf-work.ts';
import { COACHBUILT } from '../../../support/ask.ts';
import { NORTH_M, placeAt, twoRoads } from '../../../support/day/two-roads.ts';
import { worked } from '../../../support/scratch-files.ts';

const hooks = { signal: new AbortController().signal, onProgress: () => {}, lookUp: () => {} };
/** The program's own import, in this thread. */
const importHere: ImportPart = (source, outFile, tempFolder, how) =>
  importPart(source, outFile, tempFolder, how, runHere);

const ASKED = {
  driveId: 'd',
  vehicle: COACHBUILT,
  made: '',
  leaveAt: '2027-06-16T09:30',
  day: { stops: [], homeBy: '2027-06-16T17:00' },
  wanted: ['fuel' as const],
};

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'services-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

function written(name: string, text: string): { path: string; name: string } {
  const path = join(home, name);
  writeFileSync(path, text);
  return { path, name };
}

const tagsXml = (tags: Tags = {}) =>
  Object.entries(tags)
    .map(([key, value]) => `<tag k="${key}" v="${value}"/>`)
    .join('');

/** A map as its own file. */
function mapFile({ nodes, ways }: Roads) {
  const points = Array.from(
    nodes.id,
    (id, i) =>
      `<node id="${id}" lat="${nodes.lat[i]}" lon="${nodes.lon[i]}">${tagsXml(nodes.tags.get(i))}</node>`,
  );
  const lines = Array.from(ways.id, (id, way) => {
    const refs = [...ways.refs.subarray(ways.start[way], ways.start[way + 1])];
    return `<way id="${id}">${refs.map((ref) => `<nd ref="${nodes.id[ref]}"/>`).join('')}${tagsXml(ways.tags[way])}</way>`;
  });
  return written('roads.osm', `<osm version="0.6">${points.join('')}${lines.join('')}</osm>`);
}

function driveFile() {
  const points = Array.from({ length: 56 }, (_, i) => {
    const { lat, lon } = placeAt(250 + 100 * i, 0);
    return `<trkpt lat="${lat}" lon="${lon}"/>`;
  });
  return written(
    'south.gpx',
    `<gpx version="1.1" creator="t"><trk><trkseg>${points.join('')}</trkseg></trk></gpx>`,
  );
}

it('a map file of which only what lies near the drive was read says that places are missing', async () => {
  const drive = driveFile();
  const engine = createHandlers();
  worked(await engine.openMap({ file: mapFile(twoRoads({})), about: drive }, hooks));
  worked(await engine.openDrive({ driveId: 'd', file: drive }, hooks));
  const { say } = worked(await engine.services(ASKED, hooks));
  expect(say.join()).toContain('missing from this list');
});

it('places on the way are the same from a file and from the shelf, and one of them goes into the drive', async () => {
  const garage = { amenity: 'fuel', name: 'Garage', opening_hours: 'Mo-Su,PH 08:00-20:00' };
  const map = mapFile(twoRoads({ points: [{ eastM: 3250, northM: NORTH_M + 15, tags: garage }] }));
  const drive = driveFile();
  const fromFile = createHandlers();
  worked(await fromFile.openMap({ file: map }, hooks));
  worked(await fromFile.openDrive({ driveId: 'd', file: drive }, hooks));
  const found = CALLS.services.value.parse(worked(await fromFile.services(ASKED, hooks)));
  expect(found.services).toHaveLength(1);
  expect(found.say).toEqual([]);

  const shelf = join(home, 'shelf');
  worked(
    await importMap(
      { shelf, importPart: importHere, now: () => new Date(0) },
      { name: 'Roads', files: [{ ...map, stays: true }], origin: { by: 'file' } },
      hooks,
    ),
  );
  const onShelf = createHandlers();
  worked(await onShelf.openMap({ shelf, about: drive }, hooks));
  worked(await onShelf.openDrive({ driveId: 'd', file: drive }, hooks));
  const again = worked(await onShelf.services(ASKED, hooks));
  expect(again.say).toEqual([]);
  const [place] = again.services;
  expect(place).toMatchObject({
    name: 'Garage',
    arriveAt: found.services[0]?.arriveAt,
    open: { is: 'open' },
  });

  if (place?.way === undefined) throw new Error('no way to the garage');
  const { fromM, toM, path } = place.way;
  worked(await onShelf.takeWay({ driveId: 'd', newId: 'e', fromM, toM, path }, hooks));
  const { wanted: _, ...check } = ASKED;
  const day = { ...ASKED.day, stops: [place.stop] };
  const report = worked(await onShelf.check({ ...check, driveId: 'e', day }, hooks));
  expect(report.findings.filter(({ level }) => level === 'barred')).toEqual([]);
  expect(report.day?.missed).toEqual([]);
  expect(report.day?.stops[0]).toMatchObject({ arriveAt: place.arriveAt, open: place.open });
  expect(report.day?.due.map(({ kind }) => kind)).toEqual(['leave', 'service', 'home']);
});
