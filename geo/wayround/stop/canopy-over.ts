import type { CheckInput } from '../../check.ts';
import { distanceM } from '../../earth/sphere.ts';
import { type Roads, type Tags, WAY_KIND } from '../../roads/roads.ts';
import { DEFAULT_MARGINS } from '../../rules/rule.ts';
import type { ServicePoint } from '../../services/point.ts';
import { middleOf } from '../../services/points-in.ts';
import { type Canopy, canopyOf } from '../../services/say-point.ts';
import { envelopeOf } from '../../vehicle/envelope.ts';

/** A roof whose middle lies so near to a filling station is the one over its pumps. Metres. */
const ROOF_WITHIN_M = 40;

/** The roof over the pumps of a filling station against the vehicle: its own height, and that of a roof mapped there. */
export function canopyOver(
  { card, margins, roads }: Pick<CheckInput, 'card' | 'margins' | 'roads'>,
  point: ServicePoint,
): Canopy | undefined {
  if (point.kind !== 'filling station') return undefined;
  const marginM = (margins ?? DEFAULT_MARGINS).heightM;
  return canopyOf(point.tags, { needsM: envelopeOf(card).heightM, marginM, roof: roofAt(roads, point) });
}

function roofAt({ index, ways, nodes }: Roads, { lat, lon }: ServicePoint): Tags | undefined {
  const [dLat, dLon] = [ROOF_WITHIN_M / 100_000, ROOF_WITHIN_M / 50_000];
  const near = index.inBox(lat - dLat, lon - dLon, lat + dLat, lon + dLon, 'around');
  const roofs = [...new Set(near.map(({ way }) => way))].filter(
    (way) => ways.kind[way] === WAY_KIND.around && ways.tags[way]!['building'] === 'roof',
  );
  const found = roofs
    .map((way) => {
      const middle = middleOf(ways.refs.subarray(ways.start[way]!, ways.start[way + 1]!), nodes);
      return { tags: ways.tags[way]!, awayM: distanceM(lat, lon, middle.lat, middle.lon) };
    })
    .filter(({ tags, awayM }) => awayM <= ROOF_WITHIN_M && tags['maxheight'] !== undefined);
  return found.sort((a, b) => a.awayM - b.awayM)[0]?.tags;
}
