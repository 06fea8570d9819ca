/** OSM tags of one element, as mapped. */
export type Tags = Readonly<Record<string, string>>;

/** What a kept way is to us. `around` is not driven: railways, buildings, water, woods… beside or above the road. */
export const WAY_KIND = { road: 0, ferry: 1, around: 2 } as const;
export type WayKind = (typeof WAY_KIND)[keyof typeof WAY_KIND];

/**
 * Map data in memory: every kept node and way of all map files, in typed arrays.
 * A way with nodes missing from the extract is cut there, so one OSM way id may stand in several entries.
 */
export interface Roads {
  readonly nodes: {
    readonly count: number;
    readonly id: Float64Array;
    /** degrees WGS 84 */
    readonly lat: Float64Array;
    readonly lon: Float64Array;
    /** by node index; only nodes that carry tags */
    readonly tags: ReadonlyMap<number, Tags>;
  };
  readonly ways: {
    readonly count: number;
    readonly id: Float64Array;
    /** way w owns refs[start[w] .. start[w + 1]); length count + 1 */
    readonly start: Uint32Array;
    /** node indices in the way's drawn order */
    readonly refs: Uint32Array;
    readonly kind: Uint8Array;
    readonly tags: readonly Tags[];
  };
  readonly restrictions: readonly TurnRestriction[];
  readonly index: SegmentIndex;
  readonly sources: readonly MapSource[];
  /** sentences for the user: incomplete answers, leniencies, missing nodes */
  readonly notes: readonly string[];
  /** sentences saying why roads or limits may be missing from the data; each makes the whole drive unknown */
  readonly incomplete?: readonly string[];
}

/** One `type=restriction` relation, members as OSM ids. */
export interface TurnRestriction {
  readonly id: number;
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly viaNodes: readonly number[];
  readonly viaWays: readonly number[];
  readonly tags: Tags;
}

export interface MapSource {
  readonly name: string;
  readonly sha256: string;
  /** ISO date of the data where the file tells it */
  readonly dataDate?: string;
}

/** Finds segments of roads and ferries (never `around`) near a place. */
export interface SegmentIndex {
  /** Every segment whose distance to the place is at most `radiusM`, in no order. */
  near(lat: number, lon: number, radiusM: number): NearSegment[];
  /** Segments of the given kind whose box meets the box (degrees). */
  inBox(south: number, west: number, north: number, east: number, kind: 'driven' | 'around'): SegmentRef[];
}

/** Segment `seg` of way `way` runs from refs[start[way] + seg] to the next ref. */
export interface SegmentRef {
  readonly way: number;
  readonly seg: number;
}

export interface NearSegment extends SegmentRef {
  readonly distanceM: number;
  /** 0…1 along the segment in drawn order */
  readonly t: number;
}
