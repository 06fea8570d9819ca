import type { Tags } from '../../roads/roads.ts';
import { setTag } from '../../roads/set-tag.ts';
import type { PackedTags, TextTable } from '../../roads/sink.ts';
import { encodeText } from '../tag-bytes.ts';
import { DRAWN, isDrawnKey, isLineKey, type Naming } from './choose.ts';
import type { ChosenTexts } from './chosen-texts.ts';
import { TextBytes } from './text-bytes.ts';

/** What a key is good for, as a sum. */
const KEY = { known: 1, decides: 2, drawn: 4, name: 8, ref: 16, matters: 32, line: 64 } as const;

/** So many different texts and choices are remembered before all are forgotten. */
const MOST_KNOWN = 40_000;
/** A text that is one too many to have a number. */
const COUNTLESS = 0xffff;

/** What every choice tells. */
interface AnyChoice {
  /** its own tags mean nothing and are left out */
  readonly bare?: boolean;
  readonly drawn: number;
  /** of what is drawn fewer keys are needed */
  readonly line?: boolean;
  readonly naming: Naming | undefined;
}

/** By what a kind of element is chosen. */
export interface PackedRule<Choice> {
  /** keys that the choice looks at */
  decides(key: string): boolean;
  /** keys of which one at least must be there for the tags to matter */
  matters(key: string): boolean;
  /**
   * @param tags with the deciding keys; undefined where no key matters
   * @param as what else decides, as given to `choose`
   */
  choose(tags: Tags | undefined, as: number): Choice | undefined;
}

/** The tags at hand, their numbers small: one used over and over. */
interface TagsAtHand {
  texts: TextTable;
  keys: Int32Array;
  values: Int32Array;
  count: number;
}

interface KnownChoice<Choice> {
  readonly choice: Choice | undefined;
  /** kind and what it is, as they stand behind a name */
  readonly naming: Uint8Array | undefined;
}

/**
 * Chooses among elements whose tags are numbers in a block's table of texts, without making texts of them: what was
 * decided of the same keys and values once holds again.
 */
export class PackedChooser<Choice extends AnyChoice> {
  private readonly rule: PackedRule<Choice>;
  private readonly bytes = new TextBytes();
  private table: TextTable | undefined;
  private lastCount = 0;
  private keyUse = new Uint8Array(0);
  /** numbers of texts that decide, the same in all blocks; by the block's numbers, 0: not asked for yet */
  private numbers = new Uint16Array(0);
  private readonly numberOf = new Map<string, number>();
  private readonly known = new Map<number, (KnownChoice<Choice> & { readonly told: Int32Array })[]>();
  /** the numbers of what decides, of the element at hand: so many of them */
  private told = new Int32Array(66);
  private toldCount = 0;
  private readonly tags: TagsAtHand = {
    texts: NO_TEXTS,
    keys: new Int32Array(32),
    values: new Int32Array(32),
    count: 0,
  };

  constructor(rule: PackedRule<Choice>) {
    this.rule = rule;
  }

  /** @returns what the element is taken as, its texts in `into`; undefined where it is nothing to us */
  choose(packed: PackedTags, as: number, into: ChosenTexts): Choice | undefined {
    if (packed.texts !== this.table) this.startBlock(packed.texts);
    const tags = this.takeUp(packed);
    const { choice, naming } = this.decide(tags, as);
    if (choice === undefined) return undefined;
    this.writeTexts(tags, choice, into);
    if (naming) this.writeName(tags, choice.naming, naming, into);
    return choice;
  }

  private takeUp({ texts, keys, values, count }: PackedTags): TagsAtHand {
    const { tags } = this;
    if (tags.keys.length < count) {
      tags.keys = new Int32Array(count * 2);
      tags.values = new Int32Array(count * 2);
      this.told = new Int32Array(count * 4 + 2);
    }
    // whoever asks for a text beyond the table is refused, by whatever number
    const beyond = texts.count;
    for (let i = 0; i < count; i++) {
      tags.keys[i] = Math.min(keys[i]!, beyond);
      tags.values[i] = Math.min(values[i]!, beyond);
    }
    tags.texts = texts;
    tags.count = count;
    return tags;
  }

  private startBlock(texts: TextTable): void {
    this.table = texts;
    this.bytes.start(texts.count);
    if (this.keyUse.length < texts.count) {
      this.keyUse = new Uint8Array(texts.count * 2);
      this.numbers = new Uint16Array(texts.count * 2);
    }
    // beyond its table nothing is known: who asks there is refused
    const most = Math.max(texts.count, this.lastCount);
    this.keyUse.fill(0, 0, most);
    this.numbers.fill(0, 0, most);
    this.lastCount = texts.count;
    if (this.known.size < MOST_KNOWN && this.numberOf.size < MOST_KNOWN) return;
    this.numberOf.clear();
    this.known.clear();
  }

  private decide(tags: TagsAtHand, as: number): KnownChoice<Choice> {
    if (!this.tell(tags, as)) return decideByTexts(tags, as, this.rule);
    const { told, toldCount } = this;
    const mixed = mix(told, toldCount);
    const alike = this.known.get(mixed);
    if (alike) for (const one of alike) if (isSame(one.told, told, toldCount)) return one;
    const made = { ...decideByTexts(tags, as, this.rule), told: told.slice(0, toldCount) };
    if (this.known.size >= MOST_KNOWN) return made;
    if (alike) alike.push(made);
    else this.known.set(mixed, [made]);
    return made;
  }

  /** Lists the numbers of what decides. @returns whether all have one */
  private tell({ texts, keys, values, count }: TagsAtHand, as: number): boolean {
    const { told } = this;
    told[0] = as;
    told[1] = 0;
    let at = 2;
    for (let i = 0; i < count; i++) {
      const use = this.useOf(texts, keys[i]!);
      if ((use & KEY.matters) !== 0) told[1] = 1;
      if ((use & KEY.decides) === 0) continue;
      const key = this.numberFor(texts, keys[i]!);
      const value = this.numberFor(texts, values[i]!);
      if (key === COUNTLESS || value === COUNTLESS) return false;
      told[at++] = key;
      told[at++] = value;
    }
    this.toldCount = at;
    return true;
  }

  private useOf(texts: TextTable, key: number): number {
    const known = this.keyUse[key];
    if (known !== undefined && known !== 0) return known;
    const text = texts.get(key);
    const use =
      KEY.known +
      (this.rule.decides(text) ? KEY.decides : 0) +
      (this.rule.matters(text) ? KEY.matters : 0) +
      (isDrawnKey(text) ? KEY.drawn : 0) +
      (isLineKey(text) ? KEY.line : 0) +
      (text === 'name' ? KEY.name : 0) +
      (text === 'ref' ? KEY.ref : 0);
    this.keyUse[key] = use;
    return use;
  }

  private numberFor(texts: TextTable, index: number): number {
    const known = this.numbers[index];
    if (known !== undefined && known !== 0) return known;
    const text = texts.get(index);
    let number = this.numberOf.get(text);
    if (number === undefined) {
      number = Math.min(COUNTLESS, this.numberOf.size + 1);
      if (number < COUNTLESS) this.numberOf.set(text, number);
    }
    this.numbers[index] = number;
    return number;
  }

  private writeTexts({ texts, keys, values, count }: TagsAtHand, choice: Choice, into: ChosenTexts): void {
    into.tags.at = 0;
    into.drawn.at = 0;
    into.name.at = 0;
    if (choice.bare === true) return;
    const { bytes } = this;
    for (let i = 0; i < count; i++) {
      bytes.append(texts, keys[i]!, into.tags);
      bytes.append(texts, values[i]!, into.tags);
    }
    if (choice.drawn === DRAWN.no) return;
    const wanted = choice.line === true ? KEY.line : KEY.drawn;
    for (let i = 0; i < count; i++) {
      if ((this.useOf(texts, keys[i]!) & wanted) === 0) continue;
      bytes.append(texts, keys[i]!, into.drawn);
      bytes.append(texts, values[i]!, into.drawn);
    }
  }

  private writeName(
    { texts, keys, values, count }: TagsAtHand,
    naming: Naming | undefined,
    behind: Uint8Array,
    into: ChosenTexts,
  ): void {
    let name = -1;
    let ref = -1;
    for (let i = 0; i < count; i++) {
      const use = this.useOf(texts, keys[i]!);
      if ((use & KEY.name) !== 0) name = values[i]!;
      else if ((use & KEY.ref) !== 0) ref = values[i]!;
    }
    if (name < 0 && naming?.kind === 'road') name = ref;
    if (name < 0) return;
    this.bytes.append(texts, name, into.name);
    into.name.append(behind);
  }
}

const NO_TEXTS: TextTable = {
  count: 0,
  get: () => '',
  bytesOf: () => new Uint8Array(0),
};

function mix(numbers: Int32Array, count: number): number {
  let mixed = count;
  for (let i = 0; i < count; i++) mixed = Math.imul(mixed ^ numbers[i]!, 0x01000193) ^ (mixed >>> 13);
  return mixed >>> 2;
}

function isSame(all: Int32Array, told: Int32Array, count: number): boolean {
  if (all.length !== count) return false;
  for (let i = 0; i < count; i++) if (all[i] !== told[i]) return false;
  return true;
}

function decideByTexts<Choice extends AnyChoice>(
  { texts, keys, values, count }: TagsAtHand,
  as: number,
  rule: PackedRule<Choice>,
): KnownChoice<Choice> {
  const tags: Record<string, string> = {};
  let matters = false;
  for (let i = 0; i < count; i++) {
    const key = texts.get(keys[i]!);
    matters ||= rule.matters(key);
    if (rule.decides(key)) setTag(tags, key, texts.get(values[i]!));
  }
  const choice = rule.choose(matters ? tags : undefined, as);
  return { choice, naming: choice?.naming && encodeNaming(choice.naming) };
}

/** Kind and what it is, as they stand behind a name. */
export function encodeNaming({ kind, what }: Naming): Uint8Array {
  const first = encodeText(kind);
  const second = encodeText(what);
  const both = new Uint8Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  return both;
}
