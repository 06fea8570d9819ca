import { roofOver } from '../../drive/above/lies-above.ts';
import { limitClaims } from '../../tags/limits.ts';
import { pick } from '../../tags/pick.ts';
import { isMinorRoad } from '../../tags/road-class.ts';
import type { Draft } from '../finding.ts';
import { doubtOfWord, isTallerThanGranted, wordWillDo } from '../limits/height-word.ts';
import { drivenWays, type Place } from '../places.ts';
import type { RuleInput, SubjectRule } from '../rule.ts';
import { coveredM, joinRuns, type Run, wholeOf } from '../run.ts';
import { heightFacts, heightsMatterTo, saysHeight } from './height-mapped.ts';
import { type Roof, sayRoof } from './say-overhead.ts';

/** Tubes and galleries with less open road between them are entered as one. Metres. */
const ONE_TUNNEL_M = 50;

/**
 * Tunnels, passages through buildings, galleries and roofs along the driven road where no height is mapped.
 * Unknown; folded on main roads, and where another part of the same tunnel carries a height, but for a
 * vehicle that is higher than what passes where nothing is signed.
 */
export const roofed: SubjectRule = (input) => {
  if (!heightsMatterTo(input.envelope)) return [];
  const pieces = drivenWays(input.drive, input.roads)
    .filter(({ tags }) => roofOver(tags) !== undefined && tags['route'] !== 'ferry')
    .map(wholeOf);
  return joinRuns(pieces, ONE_TUNNEL_M).flatMap((run) => {
    const [first, ...rest] = run.filter(({ place }) => !isSettled(input, place));
    return first === undefined ? [] : [draftOf(input, [first, ...rest], run)];
  });
};

/** @param bare the pieces of a run that have no height */
function draftOf(input: RuleInput, bare: Run, run: Run): Draft {
  const shown = bare.find(({ place }) => isShown(place));
  const { place } = shown ?? bare[0];
  const words = wordTags(place);
  return {
    subject: 'height',
    kind: 'roof',
    level: 'unknown',
    wants: 'sign',
    run: bare,
    again: 'folded',
    aspect: 'roof',
    tags: { ...pick(place.tags, ['tunnel', 'covered', 'layer', 'name']), ...words },
    vehicle: { value: input.card.heightM, unit: 'm', what: 'height as measured' },
    folded: (shown === undefined || bare.length < run.length) && !isTallerThanGranted(input, place),
    ...sayRoof(
      roofOf(place),
      { name: place.tags['tunnel:name'], lengthM: coveredM(bare), words },
      heightFacts(input, place),
    ),
  };
}

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
  return limitClaims({ tags, forward }, ['height'])
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

function isShown(place: Place): boolean {
  return isMinorRoad(place.tags) || place.tags['tunnel'] === 'building_passage';
}

function roofOf({ tags }: Place): Roof {
  const roof = roofOver(tags);
  if (roof?.key === 'covered') return 'covered road';
  switch (roof?.text) {
    case 'building_passage':
      return 'passage';
    case 'avalanche_protector':
      return 'gallery';
    default:
      return 'tunnel';
  }
}
