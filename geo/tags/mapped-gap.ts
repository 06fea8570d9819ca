import type { Tags } from '../roads/roads.ts';
import { readLength } from '../units/read-length.ts';
import type { Reading } from '../units/reading.ts';
import { textOf } from './text-of.ts';

/** A plain width mapped on a node that stands in the way, or is the way through. */
export interface MappedGap {
  readonly key: 'width' | 'est_width';
  readonly text: string;
  readonly reading: Reading;
  /** the thing that carries it, with an article */
  readonly on: string;
  /** the tag that names the thing */
  readonly what: Tags;
}

/** What has a way through whose width matters to whoever drives there: key → values, undefined for any. */
const GAPS: readonly (readonly [key: string, values?: readonly string[]])[] = [
  ['barrier'],
  ['traffic_calming', ['choker', 'chicane', 'island', 'yes']],
  ['narrow', ['yes']],
  ['ford'],
  ['railway', ['level_crossing', 'tram_level_crossing']],
];

/** Keys beside which a width is the road's: nothing else is there for it to be the width of. */
const NO_THING = /^(width|est_width|max|source|note|fixme|description|check_date|survey|created_by|name|ref)/;

/** @returns undefined where no plain width is mapped, or it is that of a thing beside or across the road */
export function mappedGap(tags: Tags): MappedGap | undefined {
  const key = tags['width'] === undefined ? 'est_width' : 'width';
  const text = tags[key];
  if (text === undefined) return undefined;
  const thing = GAPS.find(([of, values]) => {
    const value = tags[of];
    return value !== undefined && value !== 'no' && values?.includes(value) !== false;
  })?.[0];
  if (thing === undefined && !Object.keys(tags).every((each) => NO_THING.test(each))) return undefined;
  const kind = thing === undefined ? '' : textOf(tags, thing);
  if (kind === 'kerb') return undefined;
  return {
    key,
    text,
    reading: readLength(text, 'gap'),
    on: nameOf(thing, kind),
    what: thing === undefined ? {} : { [thing]: kind },
  };
}

function nameOf(thing: string | undefined, kind: string): string {
  if (thing === undefined) return 'the road here';
  const word = (kind === 'yes' ? (thing === 'narrow' ? 'narrowing' : thing) : kind).replaceAll('_', ' ');
  return `${/^[aeiou]/.test(word) ? 'an' : 'a'} ${word}`;
}

/** The width left at a narrowing, where a figure for it is mapped. Metres. */
export function widthLeftM(tags: Tags): number | undefined {
  for (const key of ['maxwidth:physical', 'width', 'est_width', 'maxwidth']) {
    const reading = readLength(textOf(tags, key), 'gap');
    if (reading.kind === 'value') return reading.value;
  }
  return undefined;
}

/** Things that are narrower than any gap for vehicles. Metres. */
const THING_M = 1.5;

/** Whether a width is that of the bollard or block itself, which an open way through stands beside. */
export function isOwnWidth(tags: Tags, widthM: number): boolean {
  return (
    widthM < THING_M &&
    /^(bollard|block|jersey_barrier|cycle_barrier|log|debris)$/.test(textOf(tags, 'barrier'))
  );
}
