import { type GridPlan, STREET, TOWN_QUARTERS, type TownPlan } from '../plan/town.ts';
import { type Bend, STRAIGHT, type Tags } from '../plan/words.ts';
import { points } from './lines/curve.ts';
import { vertexAt } from './lines/line.ts';
import { drawLine } from './lines/make-line.ts';
import { between } from './lines/random.ts';
import type { Names } from './names.ts';
import { type Branch, branches, grid, type Site, street } from './streets.ts';

const GENTLE: Bend = { amplitude: 7, wave: 300 };
const WINDING: Bend = { amplitude: 10, wave: 260 };

/** The market town, quarter by quarter. */
export function layTown(site: Site, names: Names): void {
  for (const quarter of TOWN_QUARTERS) layQuarter(site, names, quarter);
}

function layQuarter(site: Site, names: Names, quarter: TownPlan): void {
  switch (quarter.kind) {
    case 'street':
      street(site, quarter.key, points(quarter.through), GENTLE, quarter.tags);
      return;
    case 'posts': {
      const line = site.sheet.lay(drawLine(site.random, 'road', { ...quarter, bend: STRAIGHT }));
      vertexAt(line, quarter.atM).tags = { ...quarter.posts };
      return;
    }
    case 'grid':
      layGrid(site, names, quarter);
      return;
    case 'estate':
      layEstate(site, names, quarter.key, quarter.through);
  }
}

function layGrid(site: Site, names: Names, plan: GridPlan): void {
  grid(site, plan, () => ({ ...STREET, name: names.next('town') }));
}

function layEstate(site: Site, names: Names, key: string, through: string): void {
  const tags: Tags = { ...STREET, name: names.next('estate'), traffic_calming: 'no' };
  const spine = street(site, `estate-${key}`, points(through), WINDING, tags);
  if (spine === undefined) return;
  const closes = branches(site, `close-${key}`, spine, { everyM: [72, 110] }, () =>
    close(names, between(site.random, 110, 260), 34),
  );
  for (const [i, one] of closes.entries())
    branches(site, `close-${key}-${i}`, one, { everyM: [62, 90] }, () =>
      close(names, between(site.random, 50, 110), 27),
    );
}

function close(names: Names, lengthM: number, roomM: number): Branch {
  return {
    lengthM,
    roomM,
    tags: () => ({ ...STREET, name: names.next('estate') }),
    endTags: { highway: 'turning_circle' },
  };
}
