import { lineLength, placeOn, type Tags } from './line.ts';
import type { Names } from './names.ts';
import { along, distance, item } from './plane.ts';
import { between } from './random.ts';
import { type Settlement, settlementAt, TOWN, VILLAGES } from './settlements.ts';
import { type Branch, branches, type Site } from './streets.ts';

const STREET: Tags = { highway: 'residential', surface: 'asphalt', maxspeed: '30 mph', lit: 'yes' };

/** Closes and back lanes along the through roads of every village. */
export function layVillages(site: Site, names: Names): void {
  for (const village of VILLAGES)
    for (const key of village.roads) {
      const line = site.sheet.line(key);
      const { metres } = placeOn(line, village);
      const range = [
        Math.max(0, metres - village.radius),
        Math.min(lineLength(line), metres + village.radius),
      ] as const;
      const closes = branches(
        site,
        `${village.name}-${key}`,
        line,
        [68, 120],
        () => close(between(site.random, 70, 210)),
        range,
      );
      for (const one of closes)
        branches(site, `${one.key}-x`, one, [60, 95], () => close(between(site.random, 45, 90)));
    }

  function close(lengthM: number): Branch {
    const narrow: Tags = site.random() < 0.3 ? { lit: 'no', width: '4' } : {};
    return { lengthM, roomM: 27, tags: () => ({ ...STREET, ...narrow, name: names.next('village') }) };
  }
}

const MAIN = new Set(['trunk', 'primary', 'secondary', 'tertiary', 'unclassified']);

/** Lower speed limits and lamps where through roads pass houses. */
export function signSettlements(site: Site): void {
  for (const line of site.sheet.lines) {
    if (line.kind !== 'road' || !MAIN.has(line.tags['highway'] ?? '') || line.separate) continue;
    for (let i = 1; i < line.pts.length; i++) {
      const middle = along(item(line.pts, i - 1), item(line.pts, i), 0.5);
      const where = settlementAt(middle);
      if (where === undefined || line.tags['maxspeed'] !== '60 mph') continue;
      line.seg[i - 1] = { ...line.seg[i - 1], ...limitIn(where, distance(middle, where)) };
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
