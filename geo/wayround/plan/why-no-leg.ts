import { distanceM, type Place } from '../../earth/sphere.ts';
import { given } from '../../given.ts';
import { itemAt } from '../../lists.ts';
import type { Finding } from '../../report/finding.ts';
import type { Result } from '../../result.ts';
import { cutBetween, meetsBorder } from '../none/cut.ts';
import { givesOf, lighter, sayGives } from '../none/gives.ts';
import { OPEN } from '../price/judged.ts';
import { emptyOverlay } from '../search/overlay.ts';
import type { Field, Question } from '../search/question.ts';
import { reachBack } from '../search/reach-back.ts';
import { searchForward } from '../search/search-forward.ts';
import { checkParts } from './check-parts.ts';
import { startSources, targetsOf } from './lay-legs.ts';
import type { Laying } from './laying.ts';
import { type PlanStop, partsOf } from './leg-parts.ts';
import type { PlanInput } from './plan-input.ts';
import {
  MOVE_ONE,
  NEARER_NONE,
  sayBarred,
  sayBorder,
  sayCut,
  sayMustTurn,
  sayNoRoom,
  sayNotStop,
  sayShut,
  sayWayNone,
} from './say-no-leg.ts';
import { sayNearer } from './say-places.ts';
import { isSiteGround } from './turn-ground.ts';

/** A leg that was not laid, counted from 0, with what bars it where the check found that. */
interface Failed {
  readonly laying: Laying;
  readonly leg: number;
  readonly bars?: readonly Finding[] | undefined;
}

/** How legs are laid. */
interface Laid {
  lay(input: PlanInput, laying: Laying): object;
  layAlone(input: PlanInput): Result<Laying>;
}

/** Why a leg is not laid, and what may be done about it. */
interface Why {
  readonly why: string;
  readonly todo: string;
}

/**
 * Why there is no way on one leg of a plan: which of its places to move, what would have to give, or what lies between; and
 * where a place was put past a nearer road, that.
 */
export function whyNoLeg(input: PlanInput, failed: Failed, how: Laid): string {
  const { laying, leg } = failed;
  const { why, todo } = whyNone(input, failed, how, sayWayNone(leg));
  const past = [leg, leg + 1].flatMap((i) => sayNearer(itemAt(laying.stops, i), i + 1, input.units) ?? []);
  return [why, todo, ...past].filter((each) => each !== '').join(' ');
}

/** The same of the roads nearest to the places, where the plan was laid out by others. */
export function whyNotNearer(input: PlanInput, failed: Failed, how: Laid): string {
  return whyNone(input, failed, how, NEARER_NONE).why;
}

function whyNone(
  input: PlanInput,
  { laying, leg, bars }: Failed,
  { lay, layAlone }: Laid,
  none: string,
): Why {
  const { stops, base } = laying;
  const { field } = base;
  const passes = (one: Laying) => isLaid(lay(input, one));
  const upTo = stops.slice(0, leg + 2);
  const via = upTo.findLastIndex(({ stop }, i) => i > 0 && !stop && i < stops.length - 1);
  if (via >= leg && passes({ ...laying, stops: allStops(upTo, field.costs) }))
    return { why: sayNotStop(via), todo: '' };
  const pair = stops.slice(leg, leg + 2);
  if (leg > 0 && passes({ ...laying, stops: pair })) return { why: sayMustTurn(leg), todo: '' };
  // what can be reached at all is asked of judged roads
  field.costs.guessNoMore();
  const question = questionOf(pair, laying);
  const reached = searchForward(question);
  if (reached.states !== undefined && bars !== undefined)
    return { why: sayBarred(none, bars), todo: MOVE_ONE };
  const places = input.places.slice(leg, leg + 2);
  const passing = lighter(input).find(({ card, load }) => {
    const { load: _, ...rest } = input;
    const other = { ...rest, places, card, ...given({ load }) };
    const alone = layAlone(other);
    return alone.ok && isLaid(lay(other, alone.value));
  });
  if (passing !== undefined) return { why: sayGives([passing.gives], none), todo: '' };
  const ahead = new Set(reached.states === undefined ? reached.reached : []);
  const behind = reachBack(question);
  const units = input.units ?? 'metric';
  const shut = sayShut(leg, { outM: metresOf(ahead, field), inM: metresOf(behind, field) }, units);
  const gives = givesOf(limitsBetween(input, pair, question), units);
  if (meetsBorder(field, ahead, 'out') && meetsBorder(field, behind, 'in')) {
    const here = gives.length === 0 ? '' : ` ${sayGives(gives, 'On what is loaded there is none')}`;
    return { why: sayBorder(none, here), todo: shut.trim() };
  }
  const turning = { ...question, terms: { ...question.terms, turnAnywhere: true } };
  if (searchForward(turning).states !== undefined)
    return { why: sayNoRoom(none), todo: `${MOVE_ONE}${shut}` };
  const gap = gapBetween(pair, field, { ahead, behind });
  const why =
    gives.length > 0 ? sayGives(gives, none) : sayCut(none, cutBetween(field, { ahead, behind, gap }));
  return { why, todo: `${MOVE_ONE}${shut}` };
}

function isLaid(laid: object): boolean {
  return !('leg' in laid) && !('fault' in laid);
}

function allStops(stops: readonly PlanStop[], costs: Field['costs']): PlanStop[] {
  return stops.map((one, i) => ({
    ...one,
    stop: true,
    turns: i > 0 && i + 1 < stops.length && isSiteGround(costs, one),
  }));
}

/** The leg by itself: out of its first place either way, to its second from either side, ferries taken. */
function questionOf([from, to]: readonly PlanStop[], { base, lessons }: Laying): Question {
  if (from === undefined || to === undefined) throw new RangeError('a leg has two places');
  return {
    ...base,
    terms: { ...base.terms, ferries: true },
    overlay: lessons.overlay,
    sources: startSources(from, base),
    targets: targetsOf(to, base, true),
  };
}

/** What the check bars on the way that needs the fewest limits to give. */
function limitsBetween(input: PlanInput, pair: readonly PlanStop[], question: Question): readonly Finding[] {
  const terms = { ...question.terms, limitsGive: true };
  const found = searchForward({ ...question, terms, overlay: emptyOverlay() });
  if (found.states === undefined) return [];
  const { field } = question;
  const laid = partsOf([{ found, turned: false }], pair, field.costs.graph);
  const checked = checkParts(input, laid, { stops: pair, field });
  return 'fault' in checked ? [] : checked.report.findings.filter(({ level }) => level === 'barred');
}

/** Length of the roads of a set that are open to the vehicle, either direction of each once. Metres. */
function metresOf(edges: ReadonlySet<number>, { costs }: Field): number {
  const { graph } = costs;
  const open = [...edges].filter((directed) => costs.kind(directed).open !== OPEN.never);
  const once = new Set(open.map((directed) => directed >> 1));
  let sumM = 0;
  for (const edge of once) sumM += graph.lengthM[edge]!;
  return sumM;
}

/** The nearest that the vehicle gets to the leg's end, and from there the nearest that it could go on from. */
function gapBetween(
  [, to]: readonly PlanStop[],
  { costs: { graph, judge } }: Field,
  { ahead, behind }: { readonly ahead: ReadonlySet<number>; readonly behind: ReadonlySet<number> },
): readonly [Place, Place] | undefined {
  const a =
    to &&
    nearestOf(
      [...ahead].map((directed) => judge.placeOf(graph.head[directed]!)),
      to.at,
    );
  const b =
    a &&
    nearestOf(
      [...behind].map((directed) => judge.placeOf(graph.tail[directed]!)),
      a,
    );
  return a && b && [a, b];
}

function nearestOf(places: readonly Place[], to: Place): Place | undefined {
  let [best, bestM]: [Place | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
  for (const place of places) {
    const awayM = distanceM(place.lat, place.lon, to.lat, to.lon);
    if (awayM < bestM) [best, bestM] = [place, awayM];
  }
  return best;
}
