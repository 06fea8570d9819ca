import type { Areas } from '../../drive/beside/areas.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { type Firmness, firmnessOf, isPaved } from '../../tags/ground.ts';
import { pick } from '../../tags/pick.ts';
import { textOf } from '../../tags/text-of.ts';

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
/** Where people live, work and shop the ground under a road is made, whatever green lies about it. */
const BUILT_UP = new Set([
  'residential',
  'commercial',
  'retail',
  'industrial',
  'garages',
  'education',
  'institutional',
  'civic_admin',
]);
const SOFT_LAND_USE = new Set(['meadow', 'grass', 'farmland', 'village_green', 'orchard']);

/**
 * Land that is soft unless its surface is tagged: grass, beaches, wet ground. Only a site (a camp site, a car park) tells
 * the ground of the roads within it; what the land about it is leaves a guess, and in a built-up area not even that.
 */
export function softLandAt(
  areas: Areas,
  roads: Roads,
  at: { readonly lat: number; readonly lon: number },
): SoftLand | undefined {
  // sites are asked with the land beneath them: the smallest area that tells decides
  const around = areas.at(at.lat, at.lon);
  const builtUp = around.some((way) => BUILT_UP.has(textOf(mappedOn(roads, way), 'landuse')));
  for (const way of around) {
    const tags = mappedOn(roads, way);
    const isSite = tags['amenity'] !== undefined || tags['tourism'] !== undefined;
    if (builtUp && !isSite) continue;
    if (isPaved(tags) || FIRM_LOOSE.test(textOf(tags, 'surface'))) return undefined;
    const said = firmnessOf(tags);
    if (said !== undefined)
      return {
        way,
        tags: pick(tags, ['amenity', 'tourism', 'landuse', 'natural', 'surface', 'smoothness']),
        mapped: isSite && SOFT.has(said.firmness),
      };
    if (isSoftLand(tags))
      return { way, tags: pick(tags, ['natural', 'landuse', 'leisure', 'wetland']), mapped: false };
  }
  return undefined;
}

function isSoftLand(tags: Tags): boolean {
  return (
    SOFT_NATURAL.has(textOf(tags, 'natural')) ||
    SOFT_LAND_USE.has(textOf(tags, 'landuse')) ||
    tags['leisure'] === 'common'
  );
}
