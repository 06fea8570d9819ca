import { ByteStore } from './byte-store.ts';

/** The texts of a way or node as bytes, each from the start of its store to where that stands. */
export interface ChosenTexts {
  /** tag set as `encodeTags` gives it */
  readonly tags: ByteStore;
  /** of it what the thinned layers need, where it is drawn there */
  readonly drawn: ByteStore;
  /** name, kind and what it is for the name index; empty without */
  readonly name: ByteStore;
}

/** Room for the texts of one element after the other. */
export function newTexts(): ChosenTexts {
  return { tags: new ByteStore(512), drawn: new ByteStore(512), name: new ByteStore(256) };
}
