import type { Place } from '../earth/sphere.ts';
import { given } from '../given.ts';
import type { NoWayRound } from '../report/way-round.ts';
import { cutBetween, meetsBorder } from './none/cut.ts';
import { type Gives, givesOf, lighter, sayGives } from './none/gives.ts';
import type { Bar } from './past/bars.ts';
import { findDetour, questionPast } from './past/find-detour.ts';
import { judgeWay } from './past/judge-way.ts';
import { firstLessons, notedOverlay, settle } from './past/settle.ts';
import { layTrip, type Trip } from './past/trip.ts';
import { emptyOverlay } from './search/overlay.ts';
import { reachBack } from './search/reach-back.ts';
import { searchForward } from './search/search-forward.ts';

/** Why there is no way past a bar, the whole of the drive on either side of it open to leave from and come back to. */
export function whyNot(trip: Trip, bar: Bar): NoWayRound {
  const findingIds = bar.findings.map(({ id }) => id);
  // what can be reached at all is asked of judged roads
  trip.field.costs.guessNoMore();
  const stretch = { lowM: 0, fromM: bar.fromM, toM: bar.toM, highM: trip.drive.lengthM };
  const terms = { ...trip.terms, ferries: true };
  const lessons = firstLessons(trip, bar.findings, false);
  const question = questionPast(trip, stretch, terms, lessons.overlay);
  if (question.sources.length === 0 || question.targets.length === 0)
    return { findingIds, kind: 'start or end barred', why: sayEnd(question.sources.length === 0) };
  const without = vehicleGives(trip, bar);
  if (without.length > 0) {
    const why = sayGives(without, NONE, bar.findings);
    return { findingIds, kind: 'limits', why, gives: without };
  }
  const reached = searchForward(question);
  const ahead = new Set(reached.states === undefined ? reached.reached : []);
  const behind = reachBack(question);
  if (meetsBorder(trip.field, ahead, 'out') && meetsBorder(trip.field, behind, 'in'))
    return { findingIds, kind: 'edge of the map', why: EDGE };
  const turned = settle(
    trip,
    stretch,
    { ...terms, turnAnywhere: true },
    firstLessons(trip, bar.findings, false),
  );
  if (turned.way !== undefined) return { findingIds, kind: 'no room to turn', why: NO_ROOM };
  const gives = roadGives(trip, bar, stretch);
  if (gives.length > 0) return { findingIds, kind: 'limits', why: sayGives(gives, NONE), gives };
  const cut = cutBetween(trip.field, { ahead, behind, gap: gapAt(trip, bar) });
  return { findingIds, kind: 'cut off', why: `${NONE}: ${cut ?? ONLY_ROAD}.` };
}

const NONE = 'There is none';
const EDGE =
  'There is none within the map that is loaded: the search came to its edge on both sides. Load the map of the country round about and look again.';
const NO_ROOM =
  'There is none without turning round, and no place before it is mapped where this vehicle can: a turning circle, a mini-roundabout, or a road wide enough.';
const ONLY_ROAD =
  'no other road on the map leads from before it to behind it, one-way streets and private ground counted';

function sayEnd(start: boolean): string {
  return start
    ? 'The drive is barred where it begins: there is no road before it to leave from. Begin it elsewhere.'
    : 'The drive is barred where it ends: there is no road behind it to come back to. End it elsewhere.';
}

/** The places on the drive just before a bar and just behind it. */
function gapAt({ steps, field }: Trip, bar: Bar): readonly [Place, Place] | undefined {
  const before = steps.findLast(({ toM }) => toM <= bar.fromM + 1);
  const after = steps.find(({ fromM }) => fromM >= bar.toM - 1);
  if (before === undefined || after === undefined) return undefined;
  const { graph, judge } = field.costs;
  return [judge.placeOf(graph.head[before.directed]!), judge.placeOf(graph.tail[after.directed]!)];
}

/** The least set of mapped limits that would have to give, by the findings of the check on the way that needs fewest. */
function roadGives(trip: Trip, bar: Bar, stretch: Parameters<typeof questionPast>[1]): Gives {
  const terms = { ...trip.terms, ferries: true, limitsGive: true };
  const found = findDetour(trip, questionPast(trip, stretch, terms, emptyOverlay()));
  if ('states' in found) return [];
  const own = bar.findings.filter(({ fromM, toM }) => toM <= found.fromM || fromM >= found.toM);
  const bars = found.parts.length === 0 ? bar.findings : [...own, ...judgeWay(trip, found).bars];
  return givesOf(bars, trip.units);
}

/** What could be taken off the vehicle so that some way lets it by. */
function vehicleGives(trip: Trip, bar: Bar): Gives {
  const { check } = trip.input;
  const { load: _, ...unloaded } = check;
  const passing = lighter(check).find(({ card, load }) =>
    passesWith(trip, bar, { ...unloaded, card, ...given({ load }) }),
  );
  return passing === undefined ? [] : [passing.gives];
}

function passesWith(trip: Trip, bar: Bar, check: Trip['input']['check']): boolean {
  const other = layTrip({ ...trip.input, check });
  const stretch = { lowM: 0, fromM: bar.fromM, toM: bar.toM, highM: trip.drive.lengthM };
  const terms = { ...other.terms, ferries: true };
  // the bar itself may be what no longer holds
  const overlay = notedOverlay(other);
  return settle(other, stretch, terms, { overlay, learnt: new Set(), doubtFree: false }).way !== undefined;
}
