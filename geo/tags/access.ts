import type { Tags } from '../roads/roads.ts';
import { type AccessMeaning, readAccessValue } from './access-value.ts';
import { type Driven, directionOf } from './driven.ts';
import { isElsewhere, isOtherDirection, isRemark } from './key-words.ts';
import { isGoodsMode, isMotorhomeMode, isOtherMode, MOTORHOME_MODES, modeRank } from './modes.ts';
import { builtFor } from './road-class.ts';

/** One form of an access key. */
export interface AccessTag {
  readonly key: string;
  readonly text: string;
  /** how specific its mode is (modeRank) */
  readonly rank: number;
  /** the value is given lane by lane */
  readonly lanes: boolean;
  /** the value is `a @ condition` */
  readonly conditional: boolean;
}

/** What decides whether a motorhome may use a way in the driven direction. */
export interface Access {
  readonly meaning: AccessMeaning;
  /** the deciding key, '' where nothing is mapped and the class is open */
  readonly key: string;
  readonly text: string;
  /** the whole of the tag, where `text` is one clause of it */
  readonly asMapped?: string;
  /** how specific the deciding key is (modeRank); 0 for the class of road */
  readonly rank: number;
}

const OPEN: Access = { meaning: 'open', key: '', text: '', rank: 0 };

/**
 * Access of a driven way: the most specific key wins (motorhome, motor_vehicle, vehicle, access), within one the
 * driven direction's form before the plain one; without any, the class of road.
 * A general `access` does not open a way made for others, and keys of siblings leave a doubt: both are `unknown`.
 */
export function accessFor(driven: Driven): Access {
  const { tags } = driven;
  const tagged = taggedAccess(driven);
  const road = builtFor(tags);
  if (road.kind === 'closed') return accessOfClosed(tags, tagged);
  if (road.kind === 'ferry' && tagged === undefined) return accessOfFerry(tags);
  if (road.kind === 'unknown' && tagged === undefined) return ofClass(tags, 'unknown');
  return tagged ?? OPEN;
}

/** Access as tagged on a way or a node, or undefined when no key of the motorhome's chain is there. */
export function taggedAccess(driven: Driven): Access | undefined {
  const { tags } = driven;
  const direction = directionOf(driven);
  for (const mode of MOTORHOME_MODES)
    for (const key of [`${mode}:${direction}`, mode]) {
      const text = tags[key];
      if (text !== undefined) return { meaning: readAccessValue(text), key, text, rank: modeRank(mode) };
    }
  return undefined;
}

function ofClass(tags: Tags, meaning: AccessMeaning): Access {
  const key = tags['highway'] === undefined ? 'route' : 'highway';
  return { meaning, key, text: tags[key] ?? '', rank: 0 };
}

const CLOSING: ReadonlySet<AccessMeaning> = new Set(['no', 'private', 'permit']);

function accessOfClosed(tags: Tags, tagged: Access | undefined): Access {
  if (tagged !== undefined && tagged.rank >= modeRank('vehicle')) return tagged;
  const motorcar = tags['motorcar'];
  if (motorcar !== undefined && readAccessValue(motorcar) !== 'no')
    return { meaning: 'unknown', key: 'motorcar', text: motorcar, rank: 0 };
  if (tagged === undefined || CLOSING.has(tagged.meaning)) return ofClass(tags, 'no');
  // "access=yes" on a footway is mostly said to walkers
  return { ...tagged, meaning: 'unknown' };
}

function accessOfFerry(tags: Tags): Access {
  for (const key of ['hgv', 'motorcar']) {
    const text = tags[key];
    if (text === undefined) continue;
    const meaning = readAccessValue(text);
    // what carries lorries carries motorhomes; cars alone prove nothing
    return { meaning: key === 'hgv' && meaning === 'open' ? 'open' : 'unknown', key, text, rank: 0 };
  }
  return ofClass(tags, 'unknown');
}

/**
 * The motorhome's own access keys under conditions, in the driven direction, from the least to the most specific.
 * @param rank keys less specific than this cannot change what is decided and are left out
 */
export function accessConditions(driven: Driven, rank: number): AccessTag[] {
  return accessForms(driven, rank)
    .filter(({ conditional }) => conditional)
    .sort((a, b) => specificity(a) - specificity(b));
}

/** The motorhome's own access keys given lane by lane without a condition. */
export function accessLanes(driven: Driven, rank: number): AccessTag[] {
  return accessForms(driven, rank).filter(({ lanes, conditional }) => lanes && !conditional);
}

const specificity = ({ rank, key }: AccessTag): number =>
  rank * 2 + (/:(forward|backward)\b/.test(key) ? 1 : 0);

function accessForms(driven: Driven, rank: number): AccessTag[] {
  const { tags } = driven;
  const direction = directionOf(driven);
  const forms: AccessTag[] = [];
  for (const key in tags) {
    if (!key.includes(':')) continue;
    const [mode = '', ...rest] = key.split(':');
    if (!isMotorhomeMode(mode) || modeRank(mode) < rank) continue;
    if (!rest.every((part) => isForm(part) || part === direction)) continue;
    forms.push({ key, text: tags[key] ?? '', rank: modeRank(mode), ...howGiven(rest) });
  }
  return forms;
}

/** How a value is given, by the parts of its key behind the mode. */
function howGiven(parts: readonly string[]): Pick<AccessTag, 'lanes' | 'conditional'> {
  return { lanes: parts.includes('lanes'), conditional: parts.includes('conditional') };
}

const isForm = (part: string): boolean => part === 'lanes' || part === 'conditional';

/**
 * What is said of lorries in the driven direction, as accessConditions and accessLanes for `hgv`: whether it reaches a
 * heavy motorhome is for the country to say.
 */
export function goodsAccess(driven: Driven): AccessTag[] {
  const direction = directionOf(driven);
  return Object.entries(driven.tags).flatMap(([key, text]) => {
    const [mode, ...rest] = key.split(':');
    if (mode !== 'hgv' || !rest.every((part) => isForm(part) || part === direction)) return [];
    return [{ key, text, rank: 0, ...howGiven(rest) }];
  });
}

/**
 * An access key that is there, concerns the driven direction, and is not settled.
 *
 * - `lane`, `condition`, `notUnderstood`: forms of the motorhome's own keys; they may also lift a ban
 * - `motorcar`: no motor cars, and no word on motor vehicles or motorhomes: mappers often mean both
 * - `goods`: said of goods vehicles; whether it reaches a motorhome over 3.5 t is for the country to say
 */
export interface AccessDoubt {
  readonly key: string;
  readonly text: string;
  readonly binding: 'lane' | 'condition' | 'notUnderstood' | 'motorcar' | 'goods';
}

/**
 * Access keys nobody has settled. Keys less specific than the deciding one cannot change it and are left out.
 */
export function accessDoubts(driven: Driven, deciding: Access): AccessDoubt[] {
  const { tags } = driven;
  const direction = directionOf(driven);
  const doubts = [...siblingDoubts(tags, deciding)];
  for (const [key, text] of Object.entries(tags)) {
    if (!key.includes(':')) continue;
    const [first = '', ...rest] = key.split(':');
    const motorcar = first === 'motorcar' && deciding.rank < modeRank('motor_vehicle');
    if (!isMotorhomeMode(first) && !motorcar) continue;
    if (isMotorhomeMode(first) && modeRank(first) < deciding.rank) continue;
    if (rest.some((part) => isRemark(part) || isOtherDirection(part, direction))) continue;
    if (rest.some((part) => isOtherMode(part) || isGoodsMode(part) || isElsewhere(part))) continue;
    const strange = rest.filter(
      (part) => part !== 'lanes' && part !== 'conditional' && part !== direction && part !== 'both_ways',
    );
    if (strange.length > 0) doubts.push({ key, text, binding: 'notUnderstood' });
    else if (rest.includes('conditional')) doubts.push({ key, text, binding: 'condition' });
    else if (rest.includes('lanes')) doubts.push({ key, text, binding: 'lane' });
  }
  return doubts;
}

function siblingDoubts(tags: Tags, deciding: Access): AccessDoubt[] {
  const doubts: AccessDoubt[] = [];
  const { motorcar, hgv } = tags;
  if (
    motorcar !== undefined &&
    deciding.rank < modeRank('motor_vehicle') &&
    readAccessValue(motorcar) === 'no'
  )
    doubts.push({ key: 'motorcar', text: motorcar, binding: 'motorcar' });
  if (hgv !== undefined && deciding.rank < modeRank('motorhome') && readAccessValue(hgv) !== 'open')
    doubts.push({ key: 'hgv', text: hgv, binding: 'goods' });
  return doubts;
}
