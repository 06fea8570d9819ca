import type { Point } from '../../geo/earth/point.ts';
import { DRIVE_SURFACES, FARM_KINDS, FARMS, TRACK_SURFACES } from '../plan/farms.ts';
import type { Tags } from '../plan/words.ts';
import { type Line, lineLength, vertexAt } from './lines/line.ts';
import { between, pick } from './lines/random.ts';
import { settlementAt } from './settlements.ts';
import { type Branch, branches, type Site } from './streets.ts';

const RURAL = new Set(['secondary', 'tertiary', 'unclassified']);
/** Farm drives, field tracks and footpaths off the country roads. */
export function layOutskirts(site: Site): void {
  const roads = site.sheet.lines.filter(
    (line) =>
      line.kind === 'road' &&
      RURAL.has(line.tags['highway'] ?? '') &&
      !line.separate &&
      lineLength(line) > 700,
  );
  for (const line of roads) {
    for (const farm of branches(site, `farm-${line.key}`, line, { everyM: [230, 420] }, () => drive(site))) {
      if (site.random() < 0.4) gate(farm);
      branches(site, `${farm.key}-yard`, farm, { everyM: [70, 130] }, () => yard(site));
    }
    branches(site, `field-${line.key}`, line, { everyM: [330, 560] }, () => track(site));
  }
  for (const line of roads)
    branches(site, `path-${line.key}`, line, { everyM: [360, 640] }, () => path(site));
}

function isOpenCountry(at: Point): boolean {
  return settlementAt(at) === undefined;
}

function gate(line: Line): void {
  const post = vertexAt(line, Math.min(25, lineLength(line) / 2));
  if (!post.joined) post.tags = { barrier: 'gate' };
}

function drive(site: Site): Branch {
  const shut: Tags = site.random() < 0.45 ? { access: 'private' } : {};
  return {
    lengthM: between(site.random, 90, 420),
    where: isOpenCountry,
    roomM: 34,
    tags: () => ({
      highway: 'service',
      service: 'driveway',
      surface: pick(site.random, DRIVE_SURFACES),
      name: `${pick(site.random, FARMS)} ${pick(site.random, FARM_KINDS)} Drive`,
      ...shut,
    }),
  };
}

function yard(site: Site): Branch {
  return {
    lengthM: between(site.random, 35, 70),
    roomM: 18,
    tags: () => ({ highway: 'service', surface: 'concrete' }),
  };
}

function track(site: Site): Branch {
  const shut: Tags = site.random() < 0.35 ? { motor_vehicle: 'agricultural' } : {};
  return {
    lengthM: between(site.random, 220, 700),
    where: isOpenCountry,
    roomM: 26,
    tags: () => ({ highway: 'track', ...pick(site.random, TRACK_SURFACES), ...shut }),
  };
}

function path(site: Site): Branch {
  const bridle = site.random() < 0.25;
  return {
    lengthM: between(site.random, 250, 900),
    roomM: 9,
    kind: 'path',
    tags: () => ({
      highway: bridle ? 'bridleway' : 'footway',
      surface: 'ground',
      designation: bridle ? 'public_bridleway' : 'public_footpath',
    }),
  };
}
