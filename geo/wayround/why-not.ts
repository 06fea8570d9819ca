import type { Finding } from '../report/finding.ts';
import type { NoWayRound } from '../report/way-round.ts';
import { printCm, printKg } from '../units/print.ts';
import { counted, listed } from '../units/text.ts';
import { cutBetween, meetsBorder } from './none/cut.ts';
import type { Bar } from './past/bars.ts';
import { findDetour, questionPast } from './past/find-detour.ts';
import { judgeWay } from './past/judge-way.ts';
import { firstLessons, notedOverlay, settle } from './past/settle.ts';
import { layTrip, type Trip } from './past/trip.ts';
import { LIMITS } from './search/mover.ts';
import { emptyOverlay } from './search/overlay.ts';
import { reachBack } from './search/reach-back.ts';
import { searchForward } from './search/search-forward.ts';

type Gives = NonNullable<NoWayRound['gives']>;

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
  if (without.length > 0) return { findingIds, kind: 'limits', why: sayGives(without), gives: without };
  const reached = searchForward(question);
  const ahead = new Set(reached.states === undefined ? reached.reached : []);
  const behind = reachBack(question);
  if (meetsBorder(trip, ahead, 'out') && meetsBorder(trip, behind, 'in'))
    return { findingIds, kind: 'edge of the map', why: EDGE };
  const turned = settle(
    trip,
    stretch,
    { ...terms, turnAnywhere: true },
    firstLessons(trip, bar.findings, false),
  );
  if (turned.way !== undefined) return { findingIds, kind: 'no room to turn', why: NO_ROOM };
  const gives = roadGives(trip, bar, stretch);
  if (gives.length > 0) return { findingIds, kind: 'limits', why: sayGives(gives), gives };
  return { findingIds, kind: 'cut off', ...cutBetween(trip, bar, ahead, behind) };
}

const EDGE =
  'There is none within the map that is loaded: the search came to its edge on both sides. Load the map of the country round about and look again.';
const NO_ROOM =
  'There is none without turning round, and no place before it is mapped where this vehicle can: a turning circle, a mini-roundabout, or a road wide enough.';

function sayEnd(start: boolean): string {
  return start
    ? 'The drive is barred where it begins: there is no road before it to leave from. Begin it elsewhere.'
    : 'The drive is barred where it ends: there is no road behind it to come back to. End it elsewhere.';
}

/** The least set of mapped limits that would have to give, by the findings of the check on the way that needs fewest. */
function roadGives(trip: Trip, bar: Bar, stretch: Parameters<typeof questionPast>[1]): Gives {
  const terms = { ...trip.terms, ferries: true, limitsGive: true };
  const found = findDetour(trip, questionPast(trip, stretch, terms, emptyOverlay()));
  if ('states' in found) return [];
  const own = bar.findings.filter(({ fromM, toM }) => toM <= found.fromM || fromM >= found.toM);
  const bars = found.parts.length === 0 ? bar.findings : [...own, ...judgeWay(trip, found).bars];
  if (bars.length === 0 || !bars.every(({ subject }) => LIMITS.has(subject))) return [];
  return bars.map((finding) => ({
    of: 'road',
    osm: finding.osm,
    ...figuresOf(finding),
    say: sayGive(finding),
  }));
}

function figuresOf({ subject, spare, limit }: Finding): Pick<Gives[number], 'subject' | 'spare' | 'unit'> {
  const unit = limit?.unit;
  return spare === undefined || (unit !== 'm' && unit !== 'kg') ? { subject } : { subject, spare, unit };
}

function sayGive({ spare, limit, road, subject }: Finding): string {
  const where = road === undefined ? '' : ` on ${road}`;
  if (spare === undefined || limit === undefined) return `The ${subject} limit${where} would have to give.`;
  const by = limit.unit === 'kg' ? printKg(-spare, 'up') : printCm(-spare, 'up');
  return `The ${subject} limit of ${limit.asMapped}${where} is short by ${by}.`;
}

function sayGives(gives: Gives): string {
  const what = listed(gives.map(({ say }) => say.replace(/\.$/, '')));
  return gives.every(({ of }) => of === 'vehicle')
    ? `There is none for the vehicle as it is. ${what}.`
    : `There is none: ${counted(gives.length, 'limit')} would have to give at the least. ${what}.`;
}

/** What could be taken off the vehicle so that some way lets it by. */
function vehicleGives(trip: Trip, bar: Bar): Gives {
  const { check } = trip.input;
  const { card, load } = check;
  if (
    card.rack?.fitted === true &&
    passesWith(trip, bar, { ...check, card: { ...card, rack: { ...card.rack, fitted: false } } })
  )
    return [{ of: 'vehicle', osm: [], subject: 'length', say: 'With the rack taken off there is a way.' }];
  const overKg = load === undefined ? 0 : load.grossKg - card.grossKg;
  if (load !== undefined && overKg > 0) {
    const { load: _, ...unloaded } = check;
    if (passesWith(trip, bar, unloaded))
      return [
        {
          of: 'vehicle',
          osm: [],
          subject: 'mass',
          spare: -overKg,
          unit: 'kg',
          say: `Loaded no heavier than its plate there is a way: ${printKg(overKg, 'up')} have to come off, water first.`,
        },
      ];
  }
  return [];
}

function passesWith(trip: Trip, bar: Bar, check: Trip['input']['check']): boolean {
  const other = layTrip({ ...trip.input, check });
  const stretch = { lowM: 0, fromM: bar.fromM, toM: bar.toM, highM: trip.drive.lengthM };
  const terms = { ...other.terms, ferries: true };
  // the bar itself may be what no longer holds
  const overlay = notedOverlay(other);
  return settle(other, stretch, terms, { overlay, learnt: new Set(), doubtFree: false }).way !== undefined;
}
