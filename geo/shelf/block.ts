import type { Member } from '../roads/sink.ts';
import type { TagSets } from './tag-sets.ts';

/** What one tile of one layer holds, in typed arrays. */
export interface BlockContent {
  readonly sets: TagSets;
  readonly nodes: BlockNodes;
  readonly ways: BlockWays;
  /** in order of id */
  readonly relations: readonly BlockRelation[];
}

export interface BlockNodes {
  readonly count: number;
  /** ascending */
  readonly id: Float64Array;
  /** degrees WGS 84, to the last bit as they were read; NaN for a node that the source lacks */
  readonly lat: Float64Array;
  readonly lon: Float64Array;
  /** those that carry tags: place in the list of nodes, ascending, and place of the set in `sets` */
  readonly tagged: { readonly node: Uint32Array; readonly set: Uint32Array };
}

export interface BlockWays {
  readonly count: number;
  /** ascending; an id stands once */
  readonly id: Float64Array;
  /** of WAY_KIND, or EDGE */
  readonly kind: Uint8Array;
  /** place in `sets` */
  readonly set: Uint32Array;
  /** way w owns refs[start[w] .. start[w + 1]); length count + 1 */
  readonly start: Uint32Array;
  /** places in the list of nodes */
  readonly refs: Uint32Array;
}

export interface BlockRelation {
  readonly id: number;
  /** place in `sets` */
  readonly set: number;
  readonly members: readonly Member[];
}
