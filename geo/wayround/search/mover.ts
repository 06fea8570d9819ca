import type { LocalMoment } from '../../clock/moment.ts';
import type { Subject } from '../../report/kinds.ts';
import type { TurnGraph } from '../graph/turn-graph.ts';
import { type Judged, OPEN } from '../price/judged.ts';
import { PRICES } from '../price/prices.ts';
import { hasRoomToTurn, turnTenths } from '../price/turn-prices.ts';
import { NO_LAYER, nextLayer } from './layers.ts';
import { turnKey } from './overlay.ts';
import type { Question } from './question.ts';

/** Limits on sizes and masses: what a smaller or lighter vehicle would pass. */
export const LIMITS: ReadonlySet<Subject> = new Set(['height', 'width', 'length', 'mass', 'axle']);

/** A closure by the clock counts this much before and after the minute expected. Tenths of seconds. */
const EARLY_LATE_TENTHS = 10 * 600;

type Hours = readonly LocalMoment[];

/** The hardest of what holds a little before, at, and a little after the minute expected. */
function worst<T extends Judged>(each: readonly T[]): T {
  return each.reduce((hardest, one) =>
    one.open > hardest.open || (one.open === hardest.open && one.priceTenths > hardest.priceTenths)
      ? one
      : hardest,
  );
}

/**
 * One move of a search: what turning from one edge into another comes to. One object serves a whole search; a move's
 * outcome stands in its fields until the next.
 */
export class Mover {
  /** what the turn costs, the points and doubts met included; not driving the edge */
  turnTenths = 0;
  /** seconds of it that pass on the clock, tenths */
  timeTenths = 0;
  layer = 0;
  gives = 0;
  /** some answer hung on the clock and none was given */
  metClock = false;
  private readonly graph: TurnGraph;

  constructor(private readonly question: Question) {
    this.graph = question.field.costs.graph;
  }

  /** Whether the turn may be driven; @param timeTenths when the vehicle is there, since the start of the drive */
  make(turn: number, layer: number, timeTenths: number): boolean {
    const { edgeOf, turnFrom, turnTo, turnRule } = this.graph;
    const from = edgeOf[turnFrom[turn]!]!;
    const to = edgeOf[turnTo[turn]!]!;
    if (!this.begin(from, to, layer, timeTenths)) return false;
    return turnRule[turn] === 0 || this.followsRules(turnRule[turn]!, from, timeTenths);
  }

  /** Turning round where the network has no turn for it. */
  turnRound(from: number, layer: number, timeTenths: number): boolean {
    return this.begin(from, from ^ 1, layer, timeTenths);
  }

  private begin(from: number, to: number, layer: number, timeTenths: number): boolean {
    this.turnTenths = 0;
    this.timeTenths = 0;
    this.gives = 0;
    if (to === (from ^ 1) && !this.turnsRound(from)) return false;
    return this.passes(from, to, layer, timeTenths) && this.prices(from, to);
  }

  private turnsRound(from: number): boolean {
    const { costs, circleM } = this.question.field;
    if (this.question.terms.turnAnywhere !== true && !hasRoomToTurn(costs, from, circleM)) return false;
    this.timeTenths += 10 * PRICES.turnRoundS;
    return true;
  }

  /** Road and point let the vehicle by, and some layer takes the move. */
  private passes(from: number, to: number, layer: number, timeTenths: number): boolean {
    const { costs } = this.question.field;
    let kind = costs.kind(to);
    let point = costs.point(from);
    if (kind.clocked || point.clocked) {
      const hours = this.hoursAt(this.graph.head[from]!, timeTenths);
      if (hours !== undefined) {
        if (kind.clocked) kind = worst(hours.map((moment) => costs.kindWhen(to, moment)));
        if (point.clocked) point = worst(hours.map((moment) => costs.pointWhen(from, moment)));
      }
    }
    const { terms } = this.question;
    if (terms.doubtFree === true && (kind.doubt || point.doubt)) return false;
    const open = terms.limitsGive === true ? this.openIfLimitsGive(kind) : kind.open;
    const pointOpen = terms.limitsGive === true ? this.openIfLimitsGive(point) : point.open;
    this.layer = nextLayer(layer, { ground: kind.ground, open, point: pointOpen });
    if (this.layer === NO_LAYER) return false;
    if (kind.ferry && !costs.kind(from).ferry) {
      if (!terms.ferries) return false;
      this.timeTenths += 10 * PRICES.boardFerryS;
    }
    this.timeTenths += costs.waitTenths(from);
    // the same doubt over several pieces of road is met once
    this.turnTenths += point.priceTenths + (costs.kind(from) === costs.kind(to) ? 0 : kind.priceTenths);
    return true;
  }

  private openIfLimitsGive({ open, bars }: Judged): number {
    if (open === OPEN.always || !bars.every(({ subject }) => LIMITS.has(subject))) return open;
    this.gives += bars.length;
    return OPEN.always;
  }

  private prices(from: number, to: number): boolean {
    const { overlay, field } = this.question;
    const added = (overlay.edges.get(to) ?? 0) + (overlay.turns.get(turnKey(from, to)) ?? 0);
    if (added === Number.POSITIVE_INFINITY) return false;
    this.timeTenths += to === (from ^ 1) ? 0 : turnTenths(field.costs, from, to);
    this.turnTenths += added + this.timeTenths;
    return true;
  }

  private followsRules(index: number, from: number, timeTenths: number): boolean {
    const { field, terms } = this.question;
    const rules = this.graph.rules[index]!;
    const node = this.graph.head[from]!;
    const held = field.rules.hardest(rules, node);
    let { binds } = held;
    const hours = held.clocked ? this.hoursAt(node, timeTenths) : undefined;
    if (hours !== undefined) {
      const then = hours.map((moment) => field.rules.hardest(rules, node, moment).binds);
      binds = then.find((each) => each === 'yes') ?? then.find((each) => each === 'unsure') ?? 'no';
    }
    if (binds === 'yes' || (binds === 'unsure' && terms.doubtFree === true)) return false;
    if (binds === 'unsure') this.turnTenths += 10 * PRICES.unknownS;
    return true;
  }

  private hoursAt(node: number, timeTenths: number): Hours | undefined {
    const { clockAt } = this.question.terms;
    if (clockAt === undefined) {
      this.metClock = true;
      return undefined;
    }
    const offs = [-EARLY_LATE_TENTHS, 0, EARLY_LATE_TENTHS];
    const hours = offs.flatMap((off) => clockAt(node, timeTenths + off) ?? []);
    return hours.length === offs.length ? hours : undefined;
  }
}
