/**
 * What one question adds to the prices: edges and turns that the whole trip's check barred or priced, edges to keep off,
 * edges of ways already found. By directed edge, and by the pair of edges of a turn.
 */
export interface Overlay {
  /** added tenths of seconds; Infinity: absent */
  readonly edges: Map<number, number>;
  readonly turns: Map<number, number>;
  /** what an edge's own cost is multiplied by, one or more */
  readonly times: Map<number, number>;
}

export function emptyOverlay(): Overlay {
  return { edges: new Map(), turns: new Map(), times: new Map() };
}

/** One number for a turn from one directed edge into another. */
export function turnKey(from: number, to: number): number {
  return from * 2 ** 26 + to;
}

/** Adds to what stands at a key; what is absent stays absent. */
export function addTo(map: Map<number, number>, key: number, tenths: number): void {
  map.set(key, (map.get(key) ?? 0) + tenths);
}
