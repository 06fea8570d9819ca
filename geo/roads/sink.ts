import type { Tags } from './roads.ts';

/**
 * Told of a map's content in the file's order. Everything handed over is reused after the call: copy what is kept.
 * A handler left out means that kind is not wanted and need not be decoded.
 */
export interface MapSink {
  nodes?(batch: NodeBatch): void;
  way?(way: RawWay): void;
  relation?(relation: RawRelation): void;
}

/** Several nodes at once: the first `count` entries of each array. */
export interface NodeBatch {
  readonly count: number;
  readonly id: Float64Array;
  /** degrees WGS 84 */
  readonly lat: Float64Array;
  readonly lon: Float64Array;
  /** undefined for a node without tags */
  tags(index: number): Tags | undefined;
  /** the same tags by their numbers in a table of texts, where the file has one; good until the next call */
  packed?(index: number): PackedTags | undefined;
}

export interface RawWay {
  readonly id: number;
  /** node ids: the first `count` entries */
  readonly refs: Float64Array;
  readonly count: number;
  /** places of the refs where the file gives them with the way; NaN where it leaves one out */
  readonly lat?: Float64Array | undefined;
  readonly lon?: Float64Array | undefined;
  /** whether any key fits; cheaper than tags() */
  hasKey(fits: (key: string) => boolean): boolean;
  tags(): Tags;
  /** the same tags by their numbers in a table of texts, where the file has one */
  readonly packed?: PackedTags;
}

/** Tags as numbers of texts: the first `count` of each list. The table is another object for each block of a file. */
export interface PackedTags {
  readonly texts: TextTable;
  readonly keys: Float64Array;
  readonly values: Float64Array;
  readonly count: number;
}

/** The texts of a block. Both ways of asking throw a Refusal for a number outside the table. */
export interface TextTable {
  /** how many there are */
  readonly count: number;
  /** Throws a Refusal for what is no sound text. */
  get(index: number): string;
  /** UTF-8 as it stands in the file, sound or not. */
  bytesOf(index: number): Uint8Array;
}

export interface RawRelation {
  readonly id: number;
  readonly tags: Tags;
  members(): readonly Member[];
}

export interface Member {
  readonly type: 'node' | 'way' | 'relation';
  readonly id: number;
  readonly role: string;
}

/** What a file says about itself. */
export interface FileFacts {
  /** ISO date of the data */
  readonly dataDate?: string;
  /** sentences for the user: the answer is incomplete, what was passed over */
  readonly notes: readonly string[];
  /** those of the notes that mean roads or limits may be missing */
  readonly incomplete?: readonly string[];
}
