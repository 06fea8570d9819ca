import { roofOver } from '../../drive/above/lies-above.ts';
import { limitClaims } from '../../tags/limits.ts';
import { pick } from '../../tags/pick.ts';
import { isMinorRoad } from '../../tags/road-class.ts';
import { printRun, printSizeM } from '../../units/print.ts';
import { doubtOfWord, wordWillDo } from '../limits/height-word.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Piece, type Run, wholeOf } from '../run.ts';
import { heightsMatterTo, hintOfUnsigned, saysHeight } from './height-mapped.ts';

/** Tubes and galleries with less open road between them are entered as one. Metres. */
const ONE_TUNNEL_M = 50;

/**
 * Tunnels, passages through buildings, galleries and roofs along the driven road where no height is mapped.
 * Unknown; folded on main roads, and where another part of the same tunnel carries a height.
 */
export const roofed: SubjectRule = (input) => {
  if (!heightsMatterTo(input.envelope)) return [];
  const pieces = drivenWays(input.drive, input.roads)
    .filter(({ tags }) => roofOver(tags) !== undefined && tags['route'] !== 'ferry')
    .map(wholeOf);
  return joinRuns(pieces, ONE_TUNNEL_M).flatMap((run) => {
    const open = run.filter(({ place }) => !isSettled(input, place));
    const [first, ...rest] = open;
    if (first === undefined) return [];
    const bare: Run<Piece> = [first, ...rest];
    const shown = bare.find(({ place }) => isShown(place));
    const { place } = shown ?? first;
    return {
      subject: 'height' as const,
      kind: 'roof' as const,
      level: 'unknown' as const,
      run: bare,
      again: 'folded' as const,
      aspect: 'roof',
      tags: { ...pick(place.tags, ['tunnel', 'covered', 'layer', 'name']), ...wordTags(place) },
      say: `${nameOf(place)} of ${printRun(coveredM(bare))}; ${sayMissing(place)}.`,
      advice: `Look for the height before you drive in; the vehicle needs ${printSizeM(input.envelope.heightM)}.${hintOfUnsigned(input, place)}`,
      vehicle: { value: input.card.heightM, unit: 'm', what: 'height as measured' },
      folded: shown === undefined || open.length < run.length,
    };
  });
};

/** A word in place of a height settles nothing under a roof, unless the country does or the height subject speaks of it. */
function isSettled(input: RuleInput, place: Place): boolean {
  if (!saysHeight(place)) return false;
  const words = heightWords(place);
  return (
    words.some(({ word }) => word === undefined) ||
    words.every(
      ({ word }) =>
        word === undefined || wordWillDo(input, place) || doubtOfWord(input, word, place) !== undefined,
    )
  );
}

/** Each statement on height; without a word where a figure stands, or a text that the height subject doubts. */
function heightWords({ tags, forward }: Place) {
  return limitClaims(tags, ['height'], forward)
    .filter(({ binding, basis }) => binding === 'always' && basis !== 'advisory')
    .map(({ key, text, reading: { kind } }) => ({
      key,
      text,
      word: kind === 'none' || kind === 'default' || kind === 'unsigned' ? kind : undefined,
    }));
}

function wordTags(place: Place): Record<string, string> {
  return Object.fromEntries(heightWords(place).map(({ key, text }) => [key, text]));
}

function sayMissing(place: Place): string {
  const words = Object.entries(wordTags(place)).map(([key, text]) => `"${key}=${text}"`);
  return words.length === 0
    ? 'no height is mapped in it'
    : `${words.join(' and ')} ${words.length === 1 ? 'gives' : 'give'} no height for it`;
}

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
