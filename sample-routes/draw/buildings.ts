import type { Point } from '../../geo/earth/point.ts';
import type { Tags } from '../plan/words.ts';
import { pointAt } from './lines/curve.ts';
import { type Line, lineLength } from './lines/line.ts';
import { step } from './lines/plane.ts';
import { between, pick } from './lines/random.ts';
import { settlementAt } from './settlements.ts';
import type { Site } from './streets.ts';

interface Plan {
  /** along the road, and away from it */
  readonly wide: number;
  readonly deep: number;
  readonly gap: number;
  /** from the road's middle to the front wall */
  readonly back: number;
  readonly tags: Tags;
}

const OPEN = new Set(['primary', 'secondary', 'tertiary', 'unclassified', 'residential']);

/** Houses along the streets, farms at the ends of their drives. */
export function build(site: Site): void {
  for (const line of site.sheet.lines) {
    if (line.kind !== 'road' || line.separate) continue;
    const highway = line.tags['highway'] ?? '';
    if (line.tags['junction'] === undefined && OPEN.has(highway)) frontages(site, line);
    if (highway === 'service' && line.key.startsWith('farm-')) farmstead(site, line);
  }
}

function frontages(site: Site, line: Line): void {
  const length = lineLength(line);
  for (const side of [1, -1]) {
    let s = between(site.random, 6, 20);
    while (s < length - 4) {
      const plan = planFor(site, line);
      const { at, heading } = pointAt(line.pts, s + plan.wide / 2);
      const centre = step(at, heading, 0, side * (plan.back + plan.deep / 2));
      if (
        settlementAt(at) !== undefined ||
        line.tags['highway'] === 'residential' ||
        line.key.startsWith('trade')
      )
        raise(site, centre, heading, plan);
      s += plan.wide + plan.gap;
    }
  }
}

function planFor(site: Site, line: Line): Plan {
  const { random } = site;
  if (/^(terrace|south|north)-/.test(line.key)) {
    const houses = Math.round(between(random, 3, 7));
    return {
      wide: houses * 5.5,
      deep: 9.5,
      gap: between(random, 9, 34),
      back: 6.5,
      tags: { building: 'terrace' },
    };
  }
  if (line.key.startsWith('trade'))
    return {
      wide: between(random, 27, 64),
      deep: between(random, 20, 38),
      gap: between(random, 14, 40),
      back: 14,
      tags: { building: 'industrial' },
    };
  if (/^(high|market|churchgate|tanner)$/.test(line.key))
    return {
      wide: between(random, 8, 16),
      deep: between(random, 10, 18),
      gap: between(random, 0.5, 3),
      back: 6.5,
      tags: { building: pick(random, ['retail', 'house', 'commercial', 'retail']) },
    };
  if (line.key.startsWith('close') || line.key.startsWith('estate'))
    return {
      wide: between(random, 11, 14),
      deep: between(random, 8, 10),
      gap: between(random, 27, 64),
      back: between(random, 9, 12),
      tags: { building: pick(random, ['semidetached_house', 'detached', 'house']) },
    };
  return {
    wide: between(random, 9, 15),
    deep: between(random, 7, 10),
    gap: between(random, 40, 110),
    back: between(random, 8, 16),
    tags: { building: pick(random, ['house', 'detached', 'house', 'yes']) },
  };
}

function farmstead(site: Site, line: Line): void {
  const { at, heading } = pointAt(line.pts, lineLength(line));
  for (let i = 0; i < 4; i++) {
    const centre = step(at, heading, between(site.random, 8, 38), between(site.random, -34, 34));
    const barn = i > 0;
    raise(site, centre, heading + between(site.random, -0.1, 0.1), {
      wide: barn ? between(site.random, 14, 30) : 13,
      deep: barn ? between(site.random, 10, 18) : 9,
      gap: 0,
      back: 0,
      tags: { building: barn ? pick(site.random, ['barn', 'farm_auxiliary']) : 'farm' },
    });
  }
}

/** Puts a house where nothing stands in its way. */
function raise(site: Site, centre: Point, heading: number, plan: Plan): void {
  const halfDeep = plan.deep / 2;
  // a long house is checked and taken up as a row of round pieces
  const pieces = Math.max(1, Math.round(plan.wide / plan.deep));
  const along = Array.from({ length: pieces }, (_, i) =>
    step(centre, heading, ((i + 0.5) / pieces - 0.5) * plan.wide),
  );
  const reach = Math.max(halfDeep, plan.wide / pieces / 2);
  if (along.some((p) => site.ground.clearance(p, reach + 3) < reach + 1)) return;
  for (const p of along) site.ground.take(p, reach);
  const corner = (u: number, v: number) => step(centre, heading, (u * plan.wide) / 2, v * halfDeep);
  site.sheet.areas.push({
    tags: plan.tags,
    ring: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)],
  });
}
