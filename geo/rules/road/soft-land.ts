import { type Areas, areasOf } from '../../drive/beside/areas.ts';
import type { Leg } from '../../drive/drive.ts';
import type { Roads, Tags } from '../../roads/roads.ts';
import { firmnessOf, isPaved } from '../../tags/ground.ts';
import { pick } from '../../tags/pick.ts';
import { printTonnes } from '../../units/print.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput } from '../rule.ts';

/** Land that is soft unless its surface is tagged: grass, beaches, wet ground. */
export function softLandAt(
  areas: Areas,
  roads: Roads,
  at: { readonly lat: number; readonly lon: number },
): { readonly way: number; readonly tags: Tags } | undefined {
  // sites are asked with the land beneath them: the smallest area that tells decides
  for (const way of areas.at(at.lat, at.lon)) {
    const tags = roads.ways.tags[way] ?? {};
    if (isPaved(tags) || /^(gravel|fine_gravel|compacted)/.test(tags['surface'] ?? '')) return undefined;
    if (firmnessOf(tags) !== undefined)
      return { way, tags: pick(tags, ['amenity', 'tourism', 'surface', 'smoothness']) };
    if (isSoftLand(tags)) return { way, tags: pick(tags, ['natural', 'landuse', 'leisure', 'wetland']) };
  }
  return undefined;
}

function isSoftLand(tags: Tags): boolean {
  return (
    /^(beach|sand|wetland|mud|grassland|shoal|dune)$/.test(tags['natural'] ?? '') ||
    /^(meadow|grass|farmland|village_green|orchard)$/.test(tags['landuse'] ?? '') ||
    tags['leisure'] === 'common'
  );
}

/** Where the drive leaves the roads at its end for a pitch or a car park, it goes this far. Metres. */
const PITCH_M = 300;

/** Soft ground where the drive starts or ends off the mapped roads: a grass pitch, a meadow, a beach. */
export function softLandAtEnds(input: RuleInput): Draft[] {
  const { legs } = input.drive;
  const areas = areasOf(input.roads);
  const places = drivenWays(input.drive, input.roads);
  return [
    { leg: legs[0], beside: places[0], from: 'first' as const },
    { leg: legs.at(-1), beside: places.at(-1), from: 'last' as const },
  ].flatMap(({ leg, beside, from }) => {
    if (leg?.kind !== 'offMap' || leg.toM - leg.fromM > PITCH_M || beside === undefined) return [];
    const at = endOf(leg, from);
    const land = softLandAt(areas, input.roads, at);
    return land === undefined ? [] : [pitchDraft(input, leg, beside, land)];
  });
}

function endOf(leg: Leg & { readonly kind: 'offMap' }, from: 'first' | 'last') {
  const i = from === 'first' ? 0 : leg.lat.length - 1;
  return { lat: leg.lat[i] ?? 0, lon: leg.lon[i] ?? 0 };
}

function pitchDraft(
  input: RuleInput,
  leg: Leg & { readonly kind: 'offMap' },
  beside: Place,
  land: { readonly way: number; readonly tags: Tags },
): Draft {
  const mapped = Object.entries(land.tags).map(([key, value]) => `${key}=${value}`);
  return {
    subject: 'ground',
    kind: 'pitch',
    level: 'care',
    again: 'folded',
    run: [{ place: beside, fromM: leg.fromM, toM: leg.toM }],
    aspect: 'pitch',
    others: [{ type: 'way', id: input.roads.ways.id[land.way]! }],
    tags: land.tags,
    say: `The drive ${leg.fromM <= 0 ? 'starts' : 'ends'} off the road on soft ground (${mapped.join(', ')}).`,
    advice: `Stay on the hard part, or ask for it: ${printTonnes(input.envelope.grossKg)} on front drive does not leave wet grass or sand by itself.`,
  };
}
