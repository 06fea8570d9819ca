import { PER_DEGREE } from '../encode-block.ts';
import type { ByteStore } from './byte-store.ts';
import { DRAWN, type WayChoice } from './choose.ts';
import type { ChosenTexts } from './chosen-texts.ts';
import { type Located, sizeLocated, type WholePlaces } from './located.ts';

/** A place of a way in a relation that is kept. */
export interface Membership {
  /** where the relation's record lies */
  readonly relation: number;
  /** place among its members */
  readonly member: number;
  /** sum of RELATION */
  readonly as: number;
}

/** A way as it waits for its places: what was chosen of it, its texts, the ids of its nodes. */
export interface WayToWrite {
  readonly id: number;
  readonly choice: WayChoice;
  readonly memberships: readonly Membership[];
  readonly texts: ChosenTexts;
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
const LINE = 32;

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
  out.bytes[out.at++] =
    choice.drawn | (choice.roadClass << 2) | (choice.zone ? ZONE : 0) | (choice.line ? LINE : 0);
  out.double(way.id);
  if (memberships.length > 0) writeMemberships(memberships, out);
  writeText(texts.tags, out);
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
  // behind all that the tiles are handed
  if (texts.name.at > 0) writeText(texts.name, out);
  if (choice.drawn !== DRAWN.no) writeText(texts.drawn, out);
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
  /** drawn as a line that is joined with others */
  line = false;
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
  private named = false;

  /** Reads all before the ids of the nodes; the store stands there afterwards. */
  read(store: ByteStore): void {
    const flags = store.bytes[store.at++]!;
    this.kind = flags & KIND;
    this.nearOnly = (flags & NEAR_ONLY) !== 0;
    this.raw = (flags & RAW_REFS) !== 0;
    this.named = (flags & NAMED) !== 0;
    this.service = (flags & SERVICE) !== 0;
    const more = store.bytes[store.at++]!;
    this.drawn = more & 3;
    this.roadClass = (more >> 2) & 3;
    this.isZone = (more & ZONE) !== 0;
    this.line = (more & LINE) !== 0;
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
    this.count = store.readUint();
    this.refsAt = store.at;
  }

  /** Writes it with the tags it is drawn by alone, without places. @param refsTo where the ids of its nodes end */
  writeDrawn(store: ByteStore, refsTo: number, out: ByteStore): void {
    const { drawnFrom, drawnTo } = this;
    out.room(40);
    out.bytes[out.at++] = this.kind | (this.raw ? RAW_REFS : 0);
    out.bytes[out.at++] = this.drawn;
    out.double(this.id);
    out.uint(drawnTo - drawnFrom);
    out.append(store.bytes, drawnFrom, drawnTo);
    out.room(8);
    out.uint(this.count);
    out.append(store.bytes, this.refsAt, refsTo);
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

  /** Reads the texts behind the ids of the nodes, where the store must stand: only records still in their chunk have them. */
  readTail(store: ByteStore): void {
    this.nameFrom = 0;
    this.nameTo = 0;
    this.drawnFrom = 0;
    this.drawnTo = 0;
    if (this.named) {
      this.nameTo = pass(store);
      this.nameFrom = passed;
    }
    if (this.drawn !== DRAWN.no) {
      this.drawnTo = pass(store);
      this.drawnFrom = passed;
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

/** How a record's places are written. */
const WHOLE = 0;
const DOUBLES = 1;

/** Writes places of whole ten-millionths of a degree, those from … from + count - 1. */
export function writeWholePlaces(
  { lat7, lon7 }: WholePlaces,
  from: number,
  count: number,
  out: ByteStore,
): void {
  out.room(count * 16 + 1);
  out.bytes[out.at++] = WHOLE;
  for (let i = from, beforeLat = 0, beforeLon = 0; i < from + count; i++) {
    out.int(lat7[i]! - beforeLat);
    out.int(lon7[i]! - beforeLon);
    beforeLat = lat7[i]!;
    beforeLon = lon7[i]!;
  }
}

/** Writes places of any kind, lacking ones too. */
export function writeFinePlaces({ count, lat, lon }: Located, out: ByteStore): void {
  out.room(count * 16 + 1);
  out.bytes[out.at++] = DOUBLES;
  for (let i = 0; i < count; i++) {
    out.double(lat[i]!);
    out.double(lon[i]!);
  }
}

/** Reads the places of a way of so many nodes into `whole`, if they are such. @returns whether they are */
export function readWholePlaces(store: ByteStore, count: number, whole: WholePlaces): boolean {
  if (store.bytes[store.at] !== WHOLE) return false;
  store.at++;
  if (whole.lat7.length < count) {
    whole.lat7 = new Int32Array(count * 2);
    whole.lon7 = new Int32Array(count * 2);
  }
  const { lat7, lon7 } = whole;
  let lat = 0;
  let lon = 0;
  for (let i = 0; i < count; i++) {
    lat += store.readInt();
    lon += store.readInt();
    lat7[i] = lat;
    lon7[i] = lon;
  }
  return true;
}

/** Reads the places of a way of so many nodes, however they are written, as degrees. */
export function readPlaces(store: ByteStore, count: number, into: Located): void {
  sizeLocated(into, count);
  const { lat, lon } = into;
  if (store.bytes[store.at++] === DOUBLES) {
    for (let i = 0; i < count; i++) {
      lat[i] = store.readDouble();
      lon[i] = store.readDouble();
    }
    return;
  }
  let lat7 = 0;
  let lon7 = 0;
  for (let i = 0; i < count; i++) {
    lat7 += store.readInt();
    lon7 += store.readInt();
    lat[i] = lat7 / PER_DEGREE;
    lon[i] = lon7 / PER_DEGREE;
  }
}
