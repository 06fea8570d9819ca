import { type Line, lineLength, type Tags, vertexAt } from './line.ts';
import type { Point } from './plane.ts';
import { between, pick } from './random.ts';
import { settlementAt } from './settlements.ts';
import { type Branch, branches, type Site } from './streets.ts';

const RURAL = new Set(['secondary', 'tertiary', 'unclassified']);
const SURFACES: readonly Tags[] = [
  { surface: 'gravel', tracktype: 'grade2' },
  { surface: 'ground', tracktype: 'grade4' },
  { surface: 'compacted', tracktype: 'grade2' },
  { surface: 'grass', tracktype: 'grade5' },
  { surface: 'concrete', tracktype: 'grade1' },
];
const FARMS = [
  'Hall',
  'Manor',
  'Low',
  'High',
  'Home',
  'Mill',
  'Moor',
  'Ings',
  'Carr',
  'Grange',
  'Bank',
  'Toft',
  'Field',
  'Wood',
  'Croft',
  'Holt',
];

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
    for (const farm of branches(site, `farm-${line.key}`, line, [230, 420], () => drive(site))) {
      if (site.random() < 0.4) gate(farm);
      branches(site, `${farm.key}-yard`, farm, [70, 130], () => yard(site));
    }
    branches(site, `field-${line.key}`, line, [330, 560], () => track(site));
  }
  for (const line of roads) branches(site, `path-${line.key}`, line, [360, 640], () => path(site));
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
      surface: pick(site.random, ['asphalt', 'gravel', 'compacted']),
      name: `${pick(site.random, FARMS)} ${pick(site.random, ['Farm', 'Barn', 'Cottage'])} Drive`,
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
    tags: () => ({ highway: 'track', ...pick(site.random, SURFACES), ...shut }),
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
