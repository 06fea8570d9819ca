import type { RoadGraph } from '../../graph/road-graph.ts';
import type { Roads } from '../../roads/roads.ts';
import { advance, type WayWords, type WordNode } from './way-words.ts';

/** What states there are, and which of them a turn leads to. */
export interface States {
  readonly laid: { readonly stateCount: number; readonly edgeOf: Int32Array };
  /** the sequence of ways that a state stands for; the root where it stands for none */
  wordOf(state: number): WordNode;
  /** the state after a turn into an edge, by the sequence then driven */
  stateAt(directed: number, word: WordNode): number;
  /** the sequence after a turn from a state into an edge */
  wordAfter(state: number, directed: number): WordNode;
}

/** Lays out a state for every directed edge, and a shadow for every longer sequence that ends on its way. */
export function layStates(graph: RoadGraph, roads: Roads, { root, longByWay }: WayWords): States {
  const plain = 2 * graph.edgeCount;
  const edgeOf: number[] = [];
  const words: WordNode[] = [];
  const shadowOf = new Map<WordNode, Map<number, number>>();
  const wayId = (directed: number) => roads.ways.id[graph.way[directed >> 1]!]!;
  if (longByWay.size > 0)
    for (let directed = 0; directed < plain; directed++)
      for (const word of longByWay.get(wayId(directed)) ?? []) {
        const ofWord = shadowOf.get(word) ?? new Map<number, number>();
        ofWord.set(directed, plain + words.length);
        shadowOf.set(word, ofWord);
        edgeOf.push(directed);
        words.push(word);
      }
  const all = new Int32Array(plain + edgeOf.length);
  for (let directed = 0; directed < plain; directed++) all[directed] = directed;
  all.set(edgeOf, plain);
  const wordOf = (state: number) =>
    state >= plain ? (words[state - plain] ?? root) : (root.next.get(wayId(state)) ?? root);
  return {
    laid: { stateCount: all.length, edgeOf: all },
    wordOf,
    stateAt: (directed, word) => shadowOf.get(word)?.get(directed) ?? directed,
    wordAfter(state, directed) {
      const word = wordOf(state);
      const next = wayId(directed);
      return wayId(all[state]!) === next ? word : advance(word, next);
    },
  };
}
