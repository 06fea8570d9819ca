import type { Areas } from '../../drive/beside/areas.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { type Firmness, firmnessOf, isPaved } from '../../tags/ground.ts';
import { pick } from '../../tags/pick.ts';

/** Land that is soft, or likely to be. */
export interface SoftLand {
  /** index into Roads.ways of the area's first way */
  readonly way: number;
  readonly tags: Tags;
  /** its own surface is mapped as soft; else its use or nature lets one guess */
  readonly mapped: boolean;
}

const FIRM_LOOSE = /^(gravel|fine_gravel|compacted)/;
const SOFT: ReadonlySet<Firmness> = new Set(['impassable', 'verySoft', 'soft']);
const SOFT_NATURAL = new Set(['beach', 'sand', 'wetland', 'mud', 'grassland', 'shoal', 'dune']);
const SOFT_LAND_USE = new Set(['meadow', 'grass', 'farmland', 'village_green', 'orchard']);

/** Land that is soft unless its surface is tagged: grass, beaches, wet ground. */
export function softLandAt(
  areas: Areas,
  roads: Roads,
  at: { readonly lat: number; readonly lon: number },
): SoftLand | undefined {
  // sites are asked with the land beneath them: the smallest area that tells decides
  for (const way of areas.at(at.lat, at.lon)) {
    const tags = roads.ways.tags[way] ?? {};
    if (isPaved(tags) || FIRM_LOOSE.test(tags['surface'] ?? '')) return undefined;
    const said = firmnessOf(tags);
    if (said !== undefined)
      return {
        way,
        tags: pick(tags, ['amenity', 'tourism', 'surface', 'smoothness']),
        mapped: SOFT.has(said.firmness),
      };
    if (isSoftLand(tags))
      return { way, tags: pick(tags, ['natural', 'landuse', 'leisure', 'wetland']), mapped: false };
  }
  return undefined;
}

function isSoftLand(tags: Tags): boolean {
  return (
    SOFT_NATURAL.has(tags['natural'] ?? '') ||
    SOFT_LAND_USE.has(tags['landuse'] ?? '') ||
    tags['leisure'] === 'common'
  );
}
