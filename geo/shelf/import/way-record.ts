import type { ByteStore } from './byte-store.ts';
import { DRAWN, type WayChoice } from './choose.ts';
import { type Located, sizeLocated } from './located.ts';

/** A place of a way in a relation that is kept. */
export interface Membership {
  /** where the relation's record lies */
  readonly relation: number;
  /** place among its members */
  readonly member: number;
  /** sum of RELATION */
  readonly as: number;
}

/** The texts of a way as bytes, each from the start of its store to where that stands. */
export interface WayTexts {
  /** tag set as `encodeTags` gives it */
  readonly tags: ByteStore;
  /** of it what the thinned layers need, where the way is drawn there */
  readonly drawn: ByteStore;
  /** name, kind and what it is for the name index; empty without */
  readonly name: ByteStore;
}

/** A way as it waits for its places: what was chosen of it, its texts, the ids of its nodes. */
export interface WayToWrite {
  readonly id: number;
  readonly choice: WayChoice;
  readonly memberships: readonly Membership[];
  readonly texts: WayTexts;
  readonly refs: Float64Array;
  readonly count: number;
}

const KIND = 3;
const NEAR_ONLY = 4;
const RAW_REFS = 8;
const MEMBER = 16;
const SERVICE = 32;
const NAMED = 64;
/** of the second byte, above what it says of drawing and class */
const ZONE = 16;

/** Differences beyond this are not written as varints: they would not be exact. */
const MOST_STEP = 2 ** 51;

/** Writes a way's record: everything but its places. */
export function writeWay(way: WayToWrite, out: ByteStore): void {
  const { choice, memberships, texts, refs, count } = way;
  out.room(64 + memberships.length * 24);
  const raw = hasWideSteps(refs, count);
  out.bytes[out.at++] =
    choice.kind |
    (choice.nearOnly ? NEAR_ONLY : 0) |
    (raw ? RAW_REFS : 0) |
    (memberships.length > 0 ? MEMBER : 0) |
    (choice.service ? SERVICE : 0) |
    (texts.name.at === 0 ? 0 : NAMED);
  out.bytes[out.at++] = choice.drawn | (choice.roadClass << 2) | (choice.zone ? ZONE : 0);
  out.double(way.id);
  if (memberships.length > 0) writeMemberships(memberships, out);
  writeText(texts.tags, out);
  if (texts.name.at > 0) writeText(texts.name, out);
  if (choice.drawn !== DRAWN.no) writeText(texts.drawn, out);
  out.room(16 + count * 8);
  out.uint(count);
  for (let i = 0, before = 0; i < count; i++) {
    const ref = refs[i]!;
    if (raw) out.double(ref);
    else {
      out.int(ref - before);
      before = ref;
    }
  }
}

function hasWideSteps(refs: Float64Array, count: number): boolean {
  for (let i = 0; i < count; i++) if (Math.abs(refs[i]!) > MOST_STEP / 2) return true;
  return false;
}

function writeMemberships(memberships: readonly Membership[], out: ByteStore): void {
  out.uint(memberships.length);
  for (const { relation, member, as } of memberships) {
    out.uint(relation);
    out.uint(member);
    out.uint(as);
  }
}

function writeText(text: ByteStore, out: ByteStore): void {
  out.room(8);
  out.uint(text.at);
  out.append(text.bytes, 0, text.at);
  out.room(16);
}

/** One record as it is read: where its parts lie in the store's bytes. Used over and over. */
export class WayRecord {
  kind = 0;
  nearOnly = false;
  service = false;
  isZone = false;
  drawn = 0;
  /** of ROAD_CLASS */
  roadClass = 0;
  id = 0;
  memberships: Membership[] = [];
  tagsFrom = 0;
  tagsTo = 0;
  /** 0, 0 without a name */
  nameFrom = 0;
  nameTo = 0;
  /** 0, 0 where it is in no thinned layer */
  drawnFrom = 0;
  drawnTo = 0;
  count = 0;
  /** where the ids of its nodes stand */
  refsAt = 0;
  private raw = false;

  /** Reads all before the ids of the nodes; the store stands there afterwards. */
  read(store: ByteStore): void {
    const flags = store.bytes[store.at++]!;
    this.kind = flags & KIND;
    this.nearOnly = (flags & NEAR_ONLY) !== 0;
    this.raw = (flags & RAW_REFS) !== 0;
    this.service = (flags & SERVICE) !== 0;
    const more = store.bytes[store.at++]!;
    this.drawn = more & 3;
    this.roadClass = (more >> 2) & 3;
    this.isZone = (more & ZONE) !== 0;
    this.id = store.readDouble();
    if (this.memberships.length > 0) this.memberships = [];
    if ((flags & MEMBER) !== 0)
      for (let left = store.readUint(); left > 0; left--)
        this.memberships.push({
          relation: store.readUint(),
          member: store.readUint(),
          as: store.readUint(),
        });
    this.tagsTo = pass(store);
    this.tagsFrom = passed;
    this.nameFrom = 0;
    this.nameTo = 0;
    if ((flags & NAMED) !== 0) {
      this.nameTo = pass(store);
      this.nameFrom = passed;
    }
    this.drawnFrom = 0;
    this.drawnTo = 0;
    if (this.drawn !== DRAWN.no) {
      this.drawnTo = pass(store);
      this.drawnFrom = passed;
    }
    this.count = store.readUint();
    this.refsAt = store.at;
  }

  /** Steps over the ids of the nodes. */
  skipRefs(store: ByteStore): void {
    if (this.raw) store.at += this.count * 8;
    else {
      const { bytes } = store;
      let { at } = store;
      for (let left = this.count; left > 0; ) if (bytes[at++]! < 0x80) left--;
      store.at = at;
    }
  }

  /** The ids of the nodes; the store must stand there. */
  readRefs(store: ByteStore, into: Float64Array): void {
    for (let i = 0, before = 0; i < this.count; i++) {
      before = this.raw ? store.readDouble() : before + store.readInt();
      into[i] = before;
    }
  }
}

/** Where the run of bytes just passed began. */
let passed = 0;

function pass(store: ByteStore): number {
  const length = store.readUint();
  passed = store.at;
  store.at += length;
  return store.at;
}

const SEVENTHS = 0;
const DOUBLES = 1;

/** Places of one way in ten-millionths of a degree, where all are there and whole. */
export interface WholePlaces {
  readonly lat7: Int32Array;
  readonly lon7: Int32Array;
}

/** Writes the places of a way from `from` on: as steps of whole ten-millionths, or as doubles. */
export function writePlaces(
  located: Located,
  whole: WholePlaces | undefined,
  from: number,
  out: ByteStore,
): void {
  const { count, lat, lon } = located;
  out.room(count * 16 + 1);
  out.bytes[out.at++] = whole ? SEVENTHS : DOUBLES;
  if (whole) {
    const { lat7, lon7 } = whole;
    for (let i = from, beforeLat = 0, beforeLon = 0; i < from + count; i++) {
      out.int(lat7[i]! - beforeLat);
      out.int(lon7[i]! - beforeLon);
      beforeLat = lat7[i]!;
      beforeLon = lon7[i]!;
    }
    return;
  }
  for (let i = 0; i < count; i++) {
    out.double(lat[i]!);
    out.double(lon[i]!);
  }
}

/** Reads the places of a way of so many nodes, as degrees. */
export function readPlaces(store: ByteStore, count: number, into: Located): void {
  sizeLocated(into, count);
  const { lat, lon } = into;
  if (store.bytes[store.at++] === SEVENTHS) {
    let lat7 = 0;
    let lon7 = 0;
    for (let i = 0; i < count; i++) {
      lat7 += store.readInt();
      lon7 += store.readInt();
      lat[i] = lat7 / 1e7;
      lon[i] = lon7 / 1e7;
    }
    return;
  }
  for (let i = 0; i < count; i++) {
    lat[i] = store.readDouble();
    lon[i] = store.readDouble();
  }
}
