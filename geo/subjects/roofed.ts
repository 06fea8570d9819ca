import { roofOver } from '../above/lies-above.ts';
import { isMinorRoad } from '../tags/road-class.ts';
import { printRun, printSizeM } from '../units/print.ts';
import { heightsMatterTo, hintOfUnsigned, saysHeight } from './height-mapped.ts';
import { drivenWays, type Place } from './places.ts';
import type { SubjectRule } from './rule.ts';
import { coveredM, findingsOfRuns, joinRuns, type Piece, pick, type Run, wholeOf } from './runs.ts';

/** Tubes and galleries with less open road between them are entered as one. Metres. */
const ONE_TUNNEL_M = 50;

/**
 * Tunnels, passages through buildings, galleries and roofs along the driven road where no height is mapped.
 * Unproved; folded on main roads, and where another part of the same tunnel carries a height.
 */
export const roofed: SubjectRule = (input) => {
  if (!heightsMatterTo(input.envelope)) return [];
  const pieces = drivenWays(input.drive, input.roads)
    .filter(({ tags }) => roofOver(tags) !== undefined && tags['route'] !== 'ferry')
    .map(wholeOf);
  const drafts = joinRuns(pieces, ONE_TUNNEL_M).flatMap((run) => {
    const open = run.filter(({ place }) => !saysHeight(place));
    const [first, ...rest] = open;
    if (first === undefined) return [];
    const bare: Run<Piece> = [first, ...rest];
    const shown = bare.find(({ place }) => isShown(place));
    const { place } = shown ?? first;
    return {
      level: 'unproved' as const,
      run: bare,
      aspect: 'roof',
      tags: pick(place.tags, ['tunnel', 'covered', 'layer', 'name']),
      say: `${nameOf(place)} of ${printRun(coveredM(bare))}; no height is mapped in it.`,
      advice: `Look for the height before you drive in; the vehicle needs ${printSizeM(input.envelope.heightM)}.${hintOfUnsigned(input, place)}`,
      vehicle: { value: input.card.heightM, unit: 'm', what: 'height as measured' },
      ...(shown === undefined || open.length < run.length ? { folded: true } : {}),
    };
  });
  return findingsOfRuns(input, 'height', drafts);
};

function isShown(place: Place): boolean {
  return isMinorRoad(place.tags) || place.tags['tunnel'] === 'building_passage';
}

function nameOf({ tags }: Place): string {
  const roof = roofOver(tags);
  const name = tags['tunnel:name'] === undefined ? '' : ` (${tags['tunnel:name']})`;
  if (roof?.key === 'covered') return `A covered road${name}`;
  switch (roof?.text) {
    case 'building_passage':
      return `A passage through a building${name}`;
    case 'avalanche_protector':
      return `A gallery against avalanches${name}`;
    default:
      return `A tunnel${name}`;
  }
}
