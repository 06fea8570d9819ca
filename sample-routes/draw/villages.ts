import { apartM, pointBetween } from '../../geo/earth/point.ts';
import { type Settlement, TOWN, VILLAGES } from '../plan/settlements.ts';
import type { Tags } from '../plan/words.ts';
import { lineLength, placeOn } from './lines/line.ts';
import { item } from './lines/plane.ts';
import { between, type Random } from './lines/random.ts';
import type { Names } from './names.ts';
import { settlementAt } from './settlements.ts';
import { type Branch, branches, type Leaving, type Site } from './streets.ts';

const STREET: Tags = { highway: 'residential', surface: 'asphalt', maxspeed: '30 mph', lit: 'yes' };

/** Closes and back lanes along the through roads of every village. */
export function layVillages(site: Site, names: Names): void {
  for (const village of VILLAGES) for (const key of village.roads) layAlong(site, names, village, key);
}

function layAlong(site: Site, names: Names, village: Settlement, key: string): void {
  const { random } = site;
  const line = site.sheet.line(key);
  const { metres } = placeOn(line, village);
  const within: Leaving = {
    everyM: [68, 120],
    fromM: Math.max(0, metres - village.radius),
    toM: Math.min(lineLength(line), metres + village.radius),
  };
  const closes = branches(site, `${village.name}-${key}`, line, within, () =>
    close(random, names, between(random, 70, 210)),
  );
  for (const one of closes)
    branches(site, `${one.key}-x`, one, { everyM: [60, 95] }, () =>
      close(random, names, between(random, 45, 90)),
    );
}

function close(random: Random, names: Names, lengthM: number): Branch {
  const narrow: Tags = random() < 0.3 ? { lit: 'no', width: '4' } : {};
  return { lengthM, roomM: 27, tags: () => ({ ...STREET, ...narrow, name: names.next('village') }) };
}

const MAIN = new Set(['trunk', 'primary', 'secondary', 'tertiary', 'unclassified']);

/** Lower speed limits and lamps where through roads pass houses. */
export function signSettlements(site: Site): void {
  for (const line of site.sheet.lines) {
    if (line.kind !== 'road' || !MAIN.has(line.tags['highway'] ?? '') || line.separate) continue;
    for (let i = 1; i < line.pts.length; i++) {
      const middle = pointBetween(item(line.pts, i - 1), item(line.pts, i), 0.5);
      const where = settlementAt(middle);
      if (where === undefined || line.tags['maxspeed'] !== '60 mph') continue;
      line.seg[i - 1] = { ...line.seg[i - 1], ...limitIn(where, apartM(middle, where)) };
    }
  }
}

function limitIn(where: Settlement, metres: number): Tags {
  if (where.place === 'hamlet') return { maxspeed: '40 mph' };
  if (where === TOWN && metres < 420) return { maxspeed: '20 mph', lit: 'yes', sidewalk: 'both' };
  return { maxspeed: '30 mph', lit: 'yes', sidewalk: 'both' };
}

export function nameSettlements(site: Site): void {
  for (const { name, place, x, y } of [TOWN, ...VILLAGES])
    site.sheet.spots.push({
      x: x + 25,
      y: y + 30,
      tags: { place, name, ...(place === 'town' ? { population: '8400' } : {}) },
    });
}
