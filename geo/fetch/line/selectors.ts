import { AROUND, isZone, STANDING_NODES, type Values } from '../../roads/keep.ts';

/** The keys and values that are kept of a map, in the words of a query: `["highway"]`, `["natural"~"^(wood|water)$"]`. */

function selector(key: string, values: Values): string {
  if (values === 'any') return `["${key}"]`;
  const [only] = values;
  return values.length === 1 ? `["${key}"="${only}"]` : `["${key}"~"^(${values.join('|')})$"]`;
}

/** Ways near the line. Every highway is asked for, so what lies beside it under that key is among them. */
export const WAYS = [
  '["highway"]',
  ...Object.entries(AROUND)
    .filter(([key]) => key !== 'highway')
    .map(([key, values]) => selector(key, values)),
];

/** A ferry's line may be drawn far from where it goes. */
export const FERRIES = '["route"="ferry"]';

/** Nodes of their own near the line. */
export const NODES = Object.entries(STANDING_NODES)
  .filter(([key]) => key === 'natural')
  .map(([key, values]) => selector(key, values));

/** What is worth knowing from further off: names of places, and where to fill and empty tanks or spend a night. */
export const WIDE_NODES = Object.entries(STANDING_NODES)
  .filter(([key]) => key !== 'natural')
  .map(([key, values]) => selector(key, values));
export const WIDE_WAYS = Object.entries(STANDING_NODES)
  .filter(([key]) => key === 'amenity' || key === 'tourism')
  .map(([key, values]) => selector(key, values));

/** Zones hold for all that lies within, however large they are. */
export const ZONES = selector('boundary', zoneValues());

function zoneValues(): Values {
  const values = AROUND['boundary'] ?? [];
  return values === 'any' ? values : values.filter((boundary) => isZone({ boundary }));
}

/** Areas that tell what land the drive runs through. Buildings are too many, islands and cities too large. */
export const LAND = ['landuse', 'natural', 'leisure', 'tourism', 'amenity'].map((key) =>
  selector(key, AROUND[key] ?? 'any'),
);
