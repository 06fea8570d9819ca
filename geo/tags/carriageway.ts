import type { Tags } from '../roads/roads.ts';
import { readLength } from '../units/read-length.ts';
import type { Reading } from '../units/reading.ts';
import { textOf } from './text-of.ts';

/** What a row of parked cars takes. Metres; common practice, no source. */
const PARKED_M = { parallel: 2, half: 1, diagonal: 4, perpendicular: 4.5 };

export interface Carriageway {
  /** the figure as mapped, metres */
  readonly widthM: number;
  /** what cars parked on it take, metres */
  readonly parkedM: number;
  readonly key: string;
  readonly text: string;
  /** an estimate, by its key */
  readonly estimated: boolean;
  /** the keys that tell of parking */
  readonly parkedKeys: readonly string[];
}

/** Most telling first; the effective width already has parking taken off. */
const KEYS = ['width:effective', 'width:carriageway', 'width', 'est_width'] as const;

/** The mapped width of a way's carriageway, both directions; undefined where nothing believable is mapped. */
export function carriagewayOf(tags: Tags): Carriageway | undefined {
  for (const key of KEYS) {
    const text = tags[key];
    if (text === undefined) continue;
    const reading: Reading = readLength(text, 'carriageway');
    if (reading.kind !== 'value') continue;
    const parked = key === 'width:effective' ? { takenM: 0, keys: [] } : parkedOn(tags);
    return {
      widthM: reading.value,
      parkedM: parked.takenM,
      key,
      text,
      estimated: key === 'est_width',
      parkedKeys: parked.keys,
    };
  }
  return undefined;
}

/** A width that is mapped and says nothing that can be read or believed. */
export interface UnreadWidth {
  readonly key: string;
  readonly text: string;
  /** why it is not believed; undefined: it cannot be read */
  readonly why?: string;
}

/** The most telling key's width, where it says nothing and no other key tells, or it is not believed; undefined else. */
export function unreadableWidth(tags: Tags): UnreadWidth | undefined {
  const key = KEYS.find((each) => tags[each] !== undefined);
  const told = carriagewayOf(tags)?.key;
  if (key === undefined || told === key) return undefined;
  const text = textOf(tags, key);
  const reading = readLength(text, 'carriageway');
  if (reading.kind === 'not believed') return { key, text, why: reading.reason };
  return told === undefined ? { key, text } : undefined;
}

/** How much of the carriageway cars parked on it take, by `parking:<side>` or the older `parking:lane:<side>`. */
function parkedOn(tags: Tags): { takenM: number; keys: string[] } {
  let takenM = 0;
  const keys = new Set<string>();
  for (const side of ['left', 'right']) {
    for (const [key, lengthwise] of [
      [`parking:${side}`, `parking:${side}:orientation`],
      ['parking:both', 'parking:both:orientation'],
      [`parking:lane:${side}`, `parking:lane:${side}:parallel`],
      ['parking:lane:both', 'parking:lane:both:parallel'],
    ] as const) {
      const value = tags[key];
      if (value === undefined) continue;
      const taken = takenBy(value, tags[lengthwise]);
      if (taken > 0) keys.add(key);
      takenM += taken;
      break;
    }
  }
  return { takenM, keys: [...keys] };
}

function takenBy(value: string, detail: string | undefined): number {
  if (detail === 'on_kerb' || detail === 'lay_by' || detail === 'street_side') return 0;
  switch (value) {
    case 'half_on_kerb':
      return PARKED_M.half;
    case 'lane':
      if (detail === 'perpendicular') return PARKED_M.perpendicular;
      return detail === 'diagonal' ? PARKED_M.diagonal : PARKED_M.parallel;
    case 'parallel':
    case 'inline':
      return detail === 'half_on_kerb' ? PARKED_M.half : PARKED_M.parallel;
    case 'diagonal':
      return PARKED_M.diagonal;
    case 'perpendicular':
    case 'orthogonal':
      return PARKED_M.perpendicular;
    default:
      return 0;
  }
}

/** One lane for both directions, by `lanes`; halves are lanes that two cars can hardly share. */
export function isSingleTrack(tags: Tags): boolean {
  const lanes = Number(tags['lanes']);
  return lanes > 0 && lanes < 2;
}

/** Driven both ways. Roundabouts, motorways and one-way roads are not. */
export function isTwoWay(tags: Tags): boolean {
  const { oneway, junction, highway } = tags;
  if (oneway !== undefined)
    return oneway === 'no' || oneway === 'false' || oneway === '0' || oneway === 'alternating';
  return (
    junction !== 'roundabout' &&
    junction !== 'circular' &&
    highway !== 'motorway' &&
    highway !== 'motorway_link'
  );
}
