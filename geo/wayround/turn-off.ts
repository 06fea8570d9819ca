import { toDeg, wrapRad } from '../earth/angles.ts';
import type { Place } from '../earth/sphere.ts';
import { given } from '../given.ts';
import { itemAt } from '../lists.ts';
import type { Finding } from '../report/finding.ts';
import { roadName } from '../rules/places.ts';
import { type FoundDetour, questionPast } from './past/find-detour.ts';
import { type JudgedWay, judgeNearWay, judgeWay, type Lessons, learn } from './past/judge-way.ts';
import { firstLessons } from './past/settle.ts';
import { layTrip, leftTo, type PastInput, type Trip } from './past/trip.ts';
import { LAYERS } from './search/layers.ts';
import { turnKey } from './search/overlay.ts';
import type { Question, Target } from './search/question.ts';
import { searchForward } from './search/search-forward.ts';

/** A junction of a drive where the vehicle can still leave it for good. */
export interface TurnOff {
  /** metres along the drive */
  readonly atM: number;
  readonly at: Place;
  /** `on` to the drive behind the finding, `back` to where the drive begins */
  readonly leads: 'on' | 'back';
  /** against the direction of coming there; `round`: it turns round on the spot */
  readonly side: 'left' | 'right' | 'straight on' | 'round';
  /** the road turned into, where it has a name or number */
  readonly onto?: string;
}

/** Searches and checks in turn, at most so often for one junction. */
const MOST_TRIES = 6;
/** Rounding of places along a drive. Metres. */
const SAME_PLACE_M = 0.5;
/** Less of a turn is no turn. Degrees. */
const STRAIGHT_DEG = 30;

/**
 * The last place to turn off before each barred or tight finding that is not folded, by its id: the last junction from
 * which this vehicle, coming as the drive comes, has a legal way on or back by the search, passed by the check near it.
 * undefined where there is none.
 */
export function lastTurnOffs(input: PastInput): ReadonlyMap<string, TurnOff | undefined> {
  const stops = input.report.findings.filter(
    ({ level, folded }) => (level === 'barred' || level === 'tight') && folded !== true,
  );
  const found = new Map<string, TurnOff | undefined>();
  if (stops.length === 0) return found;
  const trip = layTrip(input);
  const bars = stops.filter(({ level }) => level === 'barred');
  // what the check bars on one way off is barred on every other
  const lessons = firstLessons(trip, bars, false);
  for (const finding of stops) {
    const own = finding.level === 'barred' ? lessons : withFinding(trip, lessons, finding);
    found.set(finding.id, lastTurnOff(trip, finding, own));
  }
  return found;
}

/** What all junctions before one finding share. */
interface Asked {
  readonly trip: Trip;
  readonly lessons: Lessons;
  /** all junctions before the finding, in driving order */
  readonly junctions: readonly Junction[];
  /** to the drive behind the finding, or to where it ends */
  readonly on: Heading;
  /** to where the drive begins */
  readonly back: Heading;
}

/** A question without a source. */
interface Heading extends Omit<Question, 'sources'> {
  readonly targets: readonly Goal[];
}

interface Goal extends Target {
  /** which step of the drive goes on from there */
  readonly step?: number;
  /** all of its edge is driven: the place is at its end */
  readonly whole?: boolean;
}

type Junction = ReturnType<typeof questionPast>['sources'][number];

/** The same lessons with the roads of a tight finding absent too. */
function withFinding(trip: Trip, { overlay, learnt, doubtFree }: Lessons, finding: Finding): Lessons {
  const own = firstLessons(trip, [finding], doubtFree).overlay;
  return {
    doubtFree,
    learnt: new Set(learnt),
    overlay: {
      ...overlay,
      edges: new Map([...overlay.edges, ...own.edges]),
      turns: new Map([...overlay.turns, ...own.turns]),
    },
  };
}

function lastTurnOff(trip: Trip, finding: Finding, lessons: Lessons): TurnOff | undefined {
  const asked = askedOf(trip, finding, lessons);
  const { on, back, junctions } = asked;
  let leadsOn = on.targets.length > 0;
  let surely = false;
  for (const junction of junctions.toReversed()) {
    if (!branches(trip, junction)) continue;
    const ahead = leadsOn ? settled(asked, junction, on) : undefined;
    if (ahead !== undefined) return turnOffAt(trip, junction, ahead, 'on');
    if (leadsOn && !surely) {
      // asked once for all junctions: where none leads on, each would search the whole map in vain
      const any = searchForward({ ...on, sources: junctions.map(fromHere), overlay: lessons.overlay });
      leadsOn = any.states !== undefined;
      surely = true;
    }
    const home = settled(asked, junction, back);
    if (home !== undefined) return turnOffAt(trip, junction, home, 'back');
  }
  return undefined;
}

function askedOf(trip: Trip, finding: Finding, lessons: Lessons): Asked {
  const { steps, drive, field, input } = trip;
  const stretch = { lowM: 0, fromM: finding.fromM, toM: finding.toM, highM: drive.lengthM };
  const terms = { ...trip.terms, ferries: true };
  const past = questionPast(trip, stretch, terms, lessons.overlay);
  const { lookUp } = input.check;
  const shared = { field, terms, overlay: lessons.overlay, lookUp };
  const [first] = steps;
  // the drive's end seen from its other side is a beginning
  const ends = steps.slice(-1).flatMap(({ directed }) => endGoals(trip, directed ^ 1));
  const starts = steps.slice(0, 1).flatMap(({ directed }) => endGoals(trip, directed));
  const start = first && placeOf(trip, first.directed ^ 1);
  // any way will do, so the nearest is looked for: what is left of the drive behind it does not count
  return {
    trip,
    lessons,
    junctions: past.sources,
    on: { ...shared, targets: [...past.targets.map((target) => ({ ...target, restTenths: 0 })), ...ends] },
    back: { ...shared, targets: starts, leftTenths: leftTo(start, input.check.roads.nodes) },
  };
}

/** Roads that lead to an end of the drive: its own edge there driven either way, and every edge that ends in its node. */
function endGoals({ field }: Trip, outward: number): Goal[] {
  const { graph } = field.costs;
  const node = graph.tail[outward]!;
  const layers = new Array<boolean>(LAYERS).fill(true);
  const goal = { layers, restTenths: 0 };
  const into: Goal[] = [];
  for (let i = graph.outStart[node]!; i < graph.outStart[node + 1]!; i++)
    if (graph.out[i] !== outward) into.push({ ...goal, state: graph.out[i]! ^ 1, whole: true });
  return [{ ...goal, state: outward }, { ...goal, state: outward ^ 1 }, ...into];
}

/** The cost of coming there is the same for every way off; the time is not, for what hangs on the clock. */
function fromHere(junction: Junction): Junction {
  return { ...junction, costTenths: 0 };
}

/** Whether any other road than the drive's own leads on from there. */
function branches({ steps, field }: Trip, { step, state }: Junction): boolean {
  const { graph } = field.costs;
  const next = steps[step + 1];
  for (let turn = graph.turnStart[state]!; turn < graph.turnStart[state + 1]!; turn++)
    if (next?.goesOn !== true || graph.edgeOf[graph.turnTo[turn]!] !== next.directed) return true;
  return false;
}

/** A way from one junction off the drive that the check lets by; what the check bars is learnt for all junctions. */
function settled(
  { trip, lessons }: Asked,
  junction: Junction,
  heading: Heading,
): readonly number[] | undefined {
  const next = trip.steps[junction.step + 1];
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const turns = new Map(lessons.overlay.turns);
    if (next?.goesOn === true) turns.set(turnKey(junction.state, next.directed), Number.POSITIVE_INFINITY);
    const overlay = { ...lessons.overlay, turns };
    const found = searchForward({ ...heading, sources: [fromHere(junction)], overlay });
    if (found.states === undefined) return undefined;
    const edges = found.states.map((state) => trip.field.costs.graph.edgeOf[state]!);
    const { step, whole } = heading.targets[found.target] as Goal;
    const parts = partsOf(trip, whole === true ? edges.slice(1) : edges.slice(1, -1));
    const judged = barsOf(trip, {
      fromM: itemAt(trip.steps, junction.step).toM,
      toM: (step === undefined ? undefined : trip.steps[step]?.fromM) ?? trip.drive.lengthM,
      parts,
      costTenths: found.costTenths,
      gives: found.gives,
    });
    if (judged.bars.length === 0) return edges;
    if (!learn(trip, judged, lessons)) return undefined;
  }
  return undefined;
}

/**
 * What bars the way or what follows on it. What was driven before it is driven anyhow, and whether it may be left again
 * is the search's to say; what lies behind it may be barred only because the part judged ends there: then all is judged.
 */
function barsOf(trip: Trip, detour: FoundDetour): JudgedWay {
  const near = onAndBehind(judgeNearWay(trip, detour));
  const endM = detour.fromM + near.lengthM;
  return near.bars.some(({ fromM }) => fromM > endM) ? onAndBehind(judgeWay(trip, detour)) : near;
}

function onAndBehind(judged: JudgedWay): JudgedWay {
  const { bars, detour } = judged;
  // a span ends before the way, a point may stand at the turn into it
  const meets = ({ fromM, toM }: Finding) =>
    toM - fromM > SAME_PLACE_M ? toM > detour.fromM + SAME_PLACE_M : toM > detour.fromM - SAME_PLACE_M;
  return { ...judged, bars: bars.filter(meets) };
}

function partsOf({ field }: Trip, edges: readonly number[]): FoundDetour['parts'] {
  return edges.map((directed) => ({ directed, fromM: 0, toM: field.costs.graph.lengthM[directed >> 1]! }));
}

function turnOffAt(
  trip: Trip,
  { step, state }: Junction,
  edges: readonly number[],
  leads: TurnOff['leads'],
): TurnOff {
  const { costs } = trip.field;
  const into = edges[1]!;
  const turn = toDeg(wrapRad(costs.headingOut(into) - costs.headingIn(state)));
  const side = into === (state ^ 1) ? 'round' : sideOf(turn);
  const onto = roadName(costs.judge.tagsOf(costs.graph.way[into >> 1]!));
  return { atM: itemAt(trip.steps, step).toM, at: placeOf(trip, state), leads, side, ...given({ onto }) };
}

function sideOf(clockwiseDeg: number): TurnOff['side'] {
  if (Math.abs(clockwiseDeg) < STRAIGHT_DEG) return 'straight on';
  return clockwiseDeg > 0 ? 'right' : 'left';
}

/** The end of a directed edge. */
function placeOf({ field, input }: Trip, directed: number): Place {
  const { lat, lon } = input.check.roads.nodes;
  const node = field.costs.graph.head[directed]!;
  return { lat: lat[node]!, lon: lon[node]! };
}
