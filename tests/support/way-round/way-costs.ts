import { DEFAULT_MARGINS } from '../../../geo/rules/rule.ts';
import { fieldFor } from '../../../geo/wayround/field.ts';
import { OPEN } from '../../../geo/wayround/price/judged.ts';
import { searchForward } from '../../../geo/wayround/search/search-forward.ts';
import { type MapSketch, roadsFrom } from '../build-roads.ts';
import { COACH_BUILT } from '../coach-built.ts';
import { questionBetween } from './ask-small.ts';

/** A place to start from or end at: a piece of road by the crossings at its ends, in driving order. */
export interface Piece {
  readonly tail: string;
  readonly head: string;
}

/** What ways on a map cost, whatever its ways are numbered. */
export class WayCosts {
  private readonly field: ReturnType<typeof fieldFor>;
  private readonly byEnds = new Map<string, number>();
  private readonly names: readonly string[];

  constructor(sketch: MapSketch, card = COACH_BUILT) {
    const roads = roadsFrom(sketch);
    this.field = fieldFor(roads, { card, margins: DEFAULT_MARGINS }, { prefer: 'quickest' });
    this.names = Object.keys(sketch.nodes);
    const { graph } = this.field.costs;
    for (let directed = 0; directed < 2 * graph.edgeCount; directed++)
      this.byEnds.set(`${this.name(graph.tail[directed]!)} ${this.name(graph.head[directed]!)}`, directed);
  }

  /** The pieces of road that the vehicle may be on, or undefined where there are several between two crossings. */
  pieces(): Piece[] {
    const { graph } = this.field.costs;
    return [...this.byEnds.values()]
      .filter((directed) => this.field.costs.kind(directed).open !== OPEN.never)
      .map((directed) => ({
        tail: this.name(graph.tail[directed]!),
        head: this.name(graph.head[directed]!),
      }));
  }

  /**
   * Tenths of seconds from the end of one piece to the end of another, `whole`: the first one driven too, with what is
   * met on it; Infinity where no way leads there.
   */
  between(
    from: Piece,
    to: Piece,
    { whole = false } = {},
  ): { readonly cost: number; readonly ways: number[] } {
    const { costs } = this.field;
    const [a, b] = [this.find(from), this.find(to)];
    const found = searchForward(questionBetween(this.field, a, b));
    if (found.states === undefined) return { cost: Number.POSITIVE_INFINITY, ways: [] };
    const before = whole ? costs.costTenths(a) + costs.kind(a).priceTenths : 0;
    const ways = found.states.map(
      (state) => costs.roads.ways.id[costs.graph.way[costs.graph.edgeOf[state]! >> 1]!]!,
    );
    return { cost: before + found.costTenths, ways };
  }

  /** The piece itself, or what is left of it up to its end where it has been cut. */
  private find({ tail, head }: Piece): number {
    const whole = this.byEnds.get(`${tail} ${head}`);
    if (whole !== undefined) return whole;
    const { graph } = this.field.costs;
    for (const [ends, directed] of this.byEnds)
      if (ends.startsWith('cut ') && ends.endsWith(` ${head}`)) {
        const before = this.byEnds.get(`${tail} ${this.name(graph.tail[directed]!)}`);
        if (before !== undefined) return directed;
      }
    throw new Error(`no piece from ${tail} to ${head}`);
  }

  private name(node: number): string {
    return this.names[node] ?? '';
  }
}
