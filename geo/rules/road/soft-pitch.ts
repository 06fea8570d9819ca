import { areasOf } from '../../drive/beside/areas.ts';
import type { OffMap } from '../../drive/drive.ts';
import { itemAt } from '../../lists.ts';
import type { Draft } from '../finding.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { sayPitch } from './say-ground.ts';
import { type SoftLand, softLandAt } from './soft-land.ts';

/** Where the drive leaves the roads at its end for a pitch or a car park, it goes this far. Metres. */
const PITCH_M = 300;

/** Soft ground where the drive starts or ends off the mapped roads: a grass pitch, a meadow, a beach. */
export const softPitch: SubjectRule = (input) => {
  const { legs } = input.drive;
  const areas = areasOf(input.roads);
  const places = drivenWays(input.drive, input.roads);
  return [
    { leg: legs[0], beside: places[0], from: 'first' as const },
    { leg: legs.at(-1), beside: places.at(-1), from: 'last' as const },
  ].flatMap(({ leg, beside, from }) => {
    if (leg?.kind !== 'offMap' || leg.toM - leg.fromM > PITCH_M || beside === undefined) return [];
    const i = from === 'first' ? 0 : leg.lat.length - 1;
    const land = softLandAt(areas, input.roads, { lat: itemAt(leg.lat, i), lon: itemAt(leg.lon, i) });
    return land === undefined ? [] : [draftOf(input, { leg, beside, land })];
  });
};

function draftOf(
  input: RuleInput,
  { leg, beside, land }: { readonly leg: OffMap; readonly beside: Place; readonly land: SoftLand },
): Draft {
  const kind = land.mapped ? 'soft pitch' : 'pitch';
  return {
    subject: 'ground',
    kind,
    level: land.mapped ? 'tight' : 'care',
    run: [{ place: beside, fromM: leg.fromM, toM: leg.toM }],
    aspect: 'pitch',
    again: 'folded',
    others: [{ type: 'way', id: input.roads.ways.id[land.way]! }],
    tags: land.tags,
    ...sayPitch(kind, leg.fromM <= 0 ? 'starts' : 'ends', {
      tags: land.tags,
      grossKg: input.envelope.grossKg,
    }),
  };
}
