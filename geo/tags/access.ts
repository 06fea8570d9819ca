import { remembered } from '../remembered.ts';
import type { Tags } from '../roads/roads.ts';
import { beforeFirst } from '../units/text.ts';
import { type AccessMeaning, isHarder, readAccessValue } from './access-value.ts';
import { type Direction, type Driven, directionOf } from './driven.ts';
import { isElsewhere, isOtherDirection, isRemark } from './key-words.ts';
import { accessMeant } from './misspelt-access.ts';
import {
  isGoodsMode,
  isMotorhomeMode,
  isOtherMode,
  MOTORHOME_MODES,
  type MotorhomeMode,
  modeRank,
} from './modes.ts';
import { builtFor } from './road-class.ts';
import { textOf } from './text-of.ts';

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

/** Whether a key is of the motorhome's chain or of motor cars, however it goes on, or is near one of ours. */
export const isAccessKey = remembered((key) => {
  const mode = beforeFirst(key, ':');
  return isMotorhomeMode(mode) || mode === 'motorcar' || accessMeant(mode) !== undefined;
});

/** Most ways have none: their few keys are sooner looked through than every form is looked for. */
function hasAccessKey(tags: Tags): boolean {
  for (const key in tags) if (isAccessKey(key)) return true;
  return false;
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
  if (road.kind === 'closed') return accessOfClosed(driven, tagged);
  if (road.kind === 'ferry' && tagged === undefined) return accessOfFerry(driven);
  if (road.kind === 'unknown' && tagged === undefined) return ofClass(tags, 'unknown');
  return tagged ?? OPEN;
}

/** Access as tagged on a way or a node, or undefined when no key of the motorhome's chain is there. */
export function taggedAccess(driven: Driven): Access | undefined {
  if (!hasAccessKey(driven.tags)) return undefined;
  for (const mode of MOTORHOME_MODES) {
    const said = saidOf(driven, mode);
    if (said !== undefined) return { ...said, rank: modeRank(mode) };
  }
  return undefined;
}

type Said = Pick<Access, 'meaning' | 'key' | 'text'>;

/** Keys of a mode, by direction and as a whole. */
const keysOf = <Mode extends string>(mode: Mode) => ({
  plain: mode,
  both: `${mode}:both_ways`,
  forward: `${mode}:forward`,
  backward: `${mode}:backward`,
});

/** Put together once: a key made anew for each way is slow to look up. */
const KEYS_OF = {
  motorhome: keysOf('motorhome'),
  motor_vehicle: keysOf('motor_vehicle'),
  vehicle: keysOf('vehicle'),
  access: keysOf('access'),
  motorcar: keysOf('motorcar'),
  hgv: keysOf('hgv'),
} satisfies Record<MotorhomeMode | 'motorcar' | 'hgv', ReturnType<typeof keysOf>>;

/** What a plain key says: the driven direction's form; else the key and its `:both_ways`, the harder of the two. */
function saidOf(driven: Driven, mode: keyof typeof KEYS_OF): Said | undefined {
  const { tags } = driven;
  const keys = KEYS_OF[mode];
  const directed = read(tags, keys[directionOf(driven)]);
  if (directed !== undefined) return directed;
  const plain = read(tags, keys.plain);
  const both = read(tags, keys.both);
  if (plain === undefined || both === undefined) return plain ?? both;
  return isHarder(both.meaning, plain.meaning) ? both : plain;
}

function read(tags: Tags, key: string): Said | undefined {
  const text = tags[key];
  return text === undefined ? undefined : { meaning: readAccessValue(text), key, text };
}

/** What is said of motor cars: a sibling of ours, so that it settles nothing. */
export function carAccess(driven: Driven): Access | undefined {
  const said = saidOf(driven, 'motorcar');
  return said && { ...said, rank: 0 };
}

function ofClass(tags: Tags, meaning: AccessMeaning): Access {
  const key = tags['highway'] === undefined ? 'route' : 'highway';
  return { meaning, key, text: textOf(tags, key), rank: 0 };
}

const CLOSING: ReadonlySet<AccessMeaning> = new Set(['no', 'private', 'permit']);

function accessOfClosed(driven: Driven, tagged: Access | undefined): Access {
  if (tagged !== undefined && tagged.rank >= modeRank('vehicle')) return tagged;
  const cars = carAccess(driven);
  if (cars !== undefined && cars.meaning !== 'no') return { ...cars, meaning: 'unknown' };
  if (tagged === undefined || CLOSING.has(tagged.meaning)) return ofClass(driven.tags, 'no');
  // "access=yes" on a footway is mostly said to walkers
  return { ...tagged, meaning: 'unknown' };
}

function accessOfFerry(driven: Driven): Access {
  // what carries lorries carries motorhomes; cars alone prove nothing
  const lorries = saidOf(driven, 'hgv');
  if (lorries !== undefined)
    return { ...lorries, meaning: lorries.meaning === 'open' ? 'open' : 'unknown', rank: 0 };
  const cars = carAccess(driven);
  return cars === undefined ? ofClass(driven.tags, 'unknown') : { ...cars, meaning: 'unknown' };
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
    if (!key.includes(':') || !isAccessKey(key)) continue;
    const [mode = '', ...rest] = key.split(':');
    if (!isMotorhomeMode(mode) || modeRank(mode) < rank) continue;
    if (!isFormOf(rest, direction)) continue;
    forms.push({ key, text: textOf(tags, key), rank: modeRank(mode), ...howGiven(rest) });
  }
  return forms;
}

/** How a value is given, by the parts of its key behind the mode. */
function howGiven(parts: readonly string[]): Pick<AccessTag, 'lanes' | 'conditional'> {
  return { lanes: parts.includes('lanes'), conditional: parts.includes('conditional') };
}

/** Parts of a key that leave it one of ours; the lane that serves both ways is none to drive along. */
function isFormOf(parts: readonly string[], direction: Direction): boolean {
  if (parts.includes('lanes') && parts.includes('both_ways')) return false;
  return parts.every(
    (part) => part === 'lanes' || part === 'conditional' || part === 'both_ways' || part === direction,
  );
}

/**
 * What is said of lorries in the driven direction, as accessConditions and accessLanes for `hgv`: whether it reaches a
 * heavy motorhome is for the country to say.
 */
export function goodsAccess(driven: Driven): AccessTag[] {
  const direction = directionOf(driven);
  return Object.entries(driven.tags).flatMap(([key, text]) => {
    const [mode, ...rest] = key.split(':');
    if (mode !== 'hgv' || !isFormOf(rest, direction)) return [];
    return [{ key, text, rank: 0, ...howGiven(rest) }];
  });
}

/**
 * An access key that is there, concerns the driven direction, and is not settled.
 *
 * - `lane`, `condition`, `notUnderstood`: forms of the motorhome's own keys; they may also lift a ban
 * - `motorcar`: motor cars are kept out, or not let through, and no word on motor vehicles or motorhomes: mappers often
 *   mean both
 * - `misspelt`: a key that is none, and is near one of ours
 */
export interface AccessDoubt {
  readonly key: string;
  readonly text: string;
  readonly binding: 'lane' | 'condition' | 'notUnderstood' | 'motorcar' | 'misspelt';
  /** the key that a misspelt one was most likely meant to be */
  readonly meant?: string;
}

/**
 * Access keys nobody has settled. Keys less specific than the deciding one cannot change it and are left out.
 */
export function accessDoubts(driven: Driven, deciding: Access): AccessDoubt[] {
  const direction = directionOf(driven);
  const doubts = carDoubts(driven, deciding);
  for (const key in driven.tags) {
    if (!isAccessKey(key)) continue;
    const text = textOf(driven.tags, key);
    const [first = '', ...rest] = key.split(':');
    const meant = accessMeant(first);
    // the plain keys are settled
    if (meant === undefined && rest.length === 0) continue;
    const motorcar = first === 'motorcar' && deciding.rank < modeRank('motor_vehicle');
    if (meant === undefined && !isMotorhomeMode(first) && !motorcar) continue;
    if (isMotorhomeMode(first) && modeRank(first) < deciding.rank) continue;
    if (rest.some((part) => isRemark(part) || isOtherDirection(part, direction))) continue;
    if (rest.some((part) => isOtherMode(part) || isGoodsMode(part) || isElsewhere(part))) continue;
    const strange = rest.filter(
      (part) => part !== 'lanes' && part !== 'conditional' && part !== direction && part !== 'both_ways',
    );
    if (meant !== undefined) doubts.push({ key, text, binding: 'misspelt', meant });
    else if (strange.length > 0) doubts.push({ key, text, binding: 'notUnderstood' });
    else if (rest.includes('conditional')) doubts.push({ key, text, binding: 'condition' });
    else if (rest.includes('lanes')) doubts.push({ key, text, binding: 'lane' });
  }
  return doubts;
}

/** Whether a way is open, with no key in the driven direction that any vehicle or hour could make otherwise. */
export function isPlainlyOpen(driven: Driven): boolean {
  const access = accessFor(driven);
  return (
    access.meaning === 'open' &&
    accessForms(driven, 0).length === 0 &&
    accessDoubts(driven, access).length === 0 &&
    goodsAccess(driven).length === 0
  );
}

function carDoubts(driven: Driven, deciding: Access): AccessDoubt[] {
  if (deciding.rank >= modeRank('motor_vehicle') || deciding.key.startsWith('motorcar')) return [];
  const cars = carAccess(driven);
  if (cars === undefined || cars.meaning === 'open') return [];
  return [{ key: cars.key, text: cars.text, binding: 'motorcar' }];
}
