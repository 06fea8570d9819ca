import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { VehicleCard } from '../../../../geo/vehicle/card.ts';
import { CALLS } from '../../../../main/contract/calls.ts';
import { createHandlers } from '../../../../main/services/engine/handlers.ts';
import { worked } from '../../../support/scratch-files.ts';

const SAMPLE = join(import.meta.dirname, '../../../../sample-routes');
const hooks = { signal: new AbortController().signal, onProgress: () => {}, lookUp: () => {} };
const VEHICLE: VehicleCard = JSON.parse(
  readFileSync(join(SAMPLE, 'vehicles', 'coach-built-7.4.json'), 'utf8'),
);
const CHECK = { vehicle: VEHICLE, country: 'GB', made: '' };
const named = (path: string) => ({ path: join(SAMPLE, path), name: path });

async function opened() {
  const handlers = createHandlers();
  worked(await handlers.openMap({ file: named('district.osm.pbf') }, hooks));
  worked(await handlers.openDrive({ driveId: 'd', file: named('drives/barred.gpx') }, hooks));
  return handlers;
}

describe('the sample drive, barred three ways', () => {
  it('becomes one that nothing mapped stops by taking the ways round it, and is still there itself', async () => {
    const handlers = await opened();
    const before = worked(await handlers.check({ driveId: 'd', ...CHECK }, hooks));
    expect(before.findings.filter(({ level }) => level === 'barred')).toHaveLength(3);

    const ways = worked(await handlers.wayRound({ driveId: 'd', ...CHECK }, hooks));
    expect(() => CALLS.wayRound.value.parse(ways)).not.toThrow();
    expect(ways.noWayRound).toEqual([]);
    let [driveId, movedM, doneM] = ['d', 0, 0];
    const sure = ways.waysRound.filter(({ verdict }) => verdict === 'care' || verdict === 'clear');
    for (const [i, way] of sure.entries()) {
      if (way.fromM < doneM) continue;
      const { fromM, toM, path } = way;
      const request = { driveId, newId: `way-${i}`, fromM: fromM + movedM, toM: toM + movedM, path };
      const taken = worked(await handlers.takeWay(request, hooks));
      expect(taken.match.offMapM).toBe(0);
      // it is told from the barred one by name, and is in no file yet
      expect(taken.name).toBe(`${before.route.name}, changed`);
      expect(taken.file).not.toContain('barred');
      expect(taken.lengthM).toBeCloseTo(before.route.lengthM + movedM + way.extraM, -1.5);
      [driveId, movedM, doneM] = [taken.driveId, movedM + way.extraM, toM];
    }
    const after = worked(await handlers.check({ driveId, ...CHECK }, hooks));
    expect(['care', 'clear']).toContain(after.verdict);
    expect(worked(await handlers.check({ driveId: 'd', ...CHECK }, hooks)).findings).toEqual(before.findings);
  });
});

describe('a drive planned through a yard for customers', () => {
  it('is checked as one that stops there, and tells that the vehicle has to turn round', async () => {
    const handlers = await opened();
    const places = [
      { lat: 47.5253, lon: -19.981, stop: true },
      { lat: 47.498809, lon: -19.985134, stop: true },
      { lat: 47.484273, lon: -20.036846, stop: true },
    ];
    const { drive, say } = worked(await handlers.planDrive({ newId: 'p', places, ...CHECK }, hooks));
    expect(say[0]).toMatch(/^At the end, place 3, the vehicle has to turn round to leave again/);
    expect(say[1]).toMatch(/^At place 2 the vehicle has to turn round/);
    expect(drive).toMatchObject({ notes: say.slice(1), turnAtEnd: true });
    const checked = worked(await handlers.check({ driveId: 'p', ...CHECK }, hooks));
    expect(checked.findings.filter(({ level }) => level === 'barred')).toEqual([]);
    expect(checked.cautions.filter((one) => one.startsWith('At the end of the drive'))).toHaveLength(1);
  });
});

describe('places by name', () => {
  it('are found on the open map, whatever their case', async () => {
    const handlers = await opened();
    const found = worked(await handlers.findPlaces({ text: 'PELLAM' }, hooks));
    expect(found.exact).toBe(1);
    expect(CALLS.findPlaces.value.parse(found).places[0]).toMatchObject({
      name: 'Pellam',
      kind: 'place',
      where: expect.stringMatching(/ of \w+$/),
    });
    expect(worked(await handlers.findPlaces({ text: 'nowhere at all' }, hooks)).places).toEqual([]);
    expect(worked(await handlers.findPlaces({ text: ' , ' }, hooks)).places).toEqual([]);
  });
});
