import { join } from 'node:path';
import { expect, it } from 'vitest';
import { chooseRoute } from '../../../../../geo/drive/gpx/choose-route.ts';
import { checkFromFiles } from '../../../../../main/services/check-drive.ts';
import { fetchLine } from '../../../../../main/services/fetch/line/fetch-line.ts';
import { planLineFetch } from '../../../../../main/services/fetch/line/plan-line-fetch.ts';
import { readRouteFile } from '../../../../../main/services/route/read-route-file.ts';
import { readDistrict, SAMPLES } from '../../../../sample-routes/read-district.ts';
import { fastPace } from '../../../../support/map-server/fast-pace.ts';
import { MapInMemory } from '../../../../support/map-server/map-in-memory.ts';
import { serveOverpass } from '../../../../support/map-server/serve-overpass.ts';
import { worked } from '../../../../support/scratch-files.ts';
import { dataFolder } from './support.ts';

const district = readDistrict().then((file) => new MapInMemory(file));

/** The whole district's report on a drive of the sample, beside the one from what was fetched along it. */
async function bothReports(name: string) {
  const routePath = join(SAMPLES, 'drives', `${name}.gpx`);
  const { route } = worked(chooseRoute(worked(await readRouteFile(routePath)), undefined));
  const server = await serveOverpass(await district);
  const settings = { server: server.address.href, dataFolder: dataFolder(), pace: fastPace() };
  const fetched = worked(await fetchLine(worked(await planLineFetch(route, settings))));
  expect(fetched.notHad).toEqual([]);
  // at sea: no country holds it, so that the server cannot prove that it knows areas
  expect(fetched.notes.join()).toContain('Zones not asked');
  const vehiclePath = join(SAMPLES, 'vehicles', 'coach-built-7.4.json');
  const report = async (map: string) => {
    const request = { routePath, mapPaths: [map], vehiclePath, shelf: dataFolder() };
    return worked(await checkFromFiles(request, { now: () => new Date(0) })).report;
  };
  return [await report(join(SAMPLES, 'district.osm.pbf')), await report(fetched.path)] as const;
}

it.each(['everything', 'sparse'])(
  'the drive %s has the same findings from what was fetched along it as from the whole map',
  async (name) => {
    const [whole, along] = await bothReports(name);
    expect(along.findings).toEqual(whole.findings);
    expect(whole.findings.length).toBeGreaterThan(0);
    expect(along.map.roads).toBeLessThan(whole.map.roads);
    expect(along.cautions).toEqual(whole.cautions);
  },
);
