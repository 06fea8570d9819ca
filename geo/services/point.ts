import type { Place } from '../earth/sphere.ts';
import type { Tags } from '../roads/roads.ts';
import { textOf } from '../tags/text-of.ts';
import type { ServiceKind } from './kinds.ts';

/** What a place is, as mapped. */
export type PointKind = 'waste station' | 'water point' | 'drinking water' | 'filling station' | 'site';

/** A mapped place where a motorhome may fill up or empty its tanks. */
export interface ServicePoint extends Place {
  readonly osm: { readonly type: 'node' | 'way'; readonly id: number };
  readonly kind: PointKind;
  readonly name?: string;
  readonly tags: Tags;
}

/** Whether one service can be had there. What the map says no to is not offered at all. */
export interface Offer {
  readonly kind: ServiceKind;
  /** `unknown`: the key that would tell is not mapped */
  readonly is: 'yes' | 'unknown';
}

export function pointKind(tags: Tags): PointKind | undefined {
  const amenity = textOf(tags, 'amenity')
    .split(';')
    .map((each) => each.trim());
  const { tourism } = tags;
  if (amenity.includes('sanitary_dump_station')) return 'waste station';
  if (amenity.includes('water_point')) return 'water point';
  if (amenity.includes('drinking_water')) return 'drinking water';
  if (amenity.includes('fuel')) return 'filling station';
  return tourism === 'caravan_site' || tourism === 'camp_site' ? 'site' : undefined;
}

/** What it is called, or what it is. */
export function pointName({ name, kind }: Pick<ServicePoint, 'name' | 'kind'>): string {
  return name ?? POINT_WORD[kind];
}

const POINT_WORD: Readonly<Record<PointKind, string>> = {
  'waste station': 'Waste station',
  'water point': 'Water point',
  'drinking water': 'Drinking water tap',
  'filling station': 'Filling station',
  site: 'Camp or motorhome site',
};
