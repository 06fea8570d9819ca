import type { Span } from '../../drive/drive.ts';
import { given } from '../../given.ts';
import { mapDay } from '../../report/map-age.ts';
import type { DriveReport, Finding } from '../../report/report.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { Units } from '../../units/in-units.ts';
import { alongNewer } from './along-newer.ts';
import type { Comparison, Difference } from './difference.ts';
import { type Item, isOffMap, itemsOf, lengthM, sharedM, uncovered } from './item.ts';
import { lacksData, sameMeaning } from './meaning.ts';
import { ONE_PLACE_M, pairItems } from './pair-items.ts';
import { roadsChanged } from './roads-changed.ts';
import {
  sayChanged,
  sayClosed,
  sayDays,
  sayGone,
  sayNew,
  sayOffTheMap,
  sayRoadChanged,
  sayRoadMapped,
} from './say-difference.ts';

/** Two checks of one drive with one vehicle, on two maps. */
export interface ToCompare {
  readonly was: DriveReport;
  readonly now: DriveReport;
  readonly units: Units;
  /** the card is another: what it changes is told like what a map changes */
  readonly otherCard?: boolean;
  /** the same of the load */
  readonly otherLoad?: boolean;
  /** the same of the leave time */
  readonly otherLeave?: boolean;
  /** whether an object is on the newer map still; left out, it is taken to be */
  readonly isMapped?: (object: Finding['osm'][number]) => boolean;
}

/**
 * What a newer map says otherwise of a drive. Things are told apart by their place along the drive, so that a way in
 * two halves, other ids, or nodes moved by a metre are no difference. What is folded in both is left out; where the
 * newer map has no road, or is incomplete, nothing is told to be gone.
 */
export function compareReports(input: ToCompare): Result<Comparison> {
  const { was, now } = input;
  const unlike = tellUnlike(input);
  if (unlike !== undefined) return fail('not-comparable', unlike);
  const newer = alongNewer(was, now);
  const [wasDay, nowDay] = [mapDay(was.map.sources), mapDay(now.map.sources)];
  const setBack = isSetBack(wasDay, nowDay);
  const sides = sidesOf(input, newer);
  const { pairs, gone, fresh } = pairItems(sides.was, sides.now);
  const differences = [
    ...pairs.flatMap(([older, item]) => changed(older, item, input.units)),
    ...gone.flatMap((item) => lost(item, sides, { ...input, setBack })),
    ...fresh.flatMap((item) => added(item, sides, input)),
    ...offTheMap(sides, input.units),
    ...roadsChanged(was, now, newer).map(
      ({ span, was: older, now: road }): Difference => ({
        kind: 'road changed',
        finding: `road:w${road.way}${road.forward ? 'f' : 'b'}`,
        ...span,
        say: sayRoadChanged(span, older, road, input.units),
      }),
    ),
  ];
  return ok({
    differences: differences.sort((a, b) => a.fromM - b.fromM || a.toM - b.toM),
    ...given({ wasDay, nowDay }),
    say: sayDays(wasDay, nowDay),
  });
}

/** Whether the data of now are older than those of before; unknown days are not. */
export function isSetBack(wasDay: string | undefined, nowDay: string | undefined): boolean {
  return wasDay !== undefined && nowDay !== undefined && nowDay < wasDay;
}

/** A sentence where the two are not of one drive and one vehicle. */
function tellUnlike({ was, now, otherCard, otherLoad, otherLeave }: ToCompare): string | undefined {
  const differs = (pick: (report: DriveReport) => unknown) =>
    JSON.stringify(pick(was)) !== JSON.stringify(pick(now));
  const what =
    otherCard !== true && differs(({ vehicle }) => vehicle)
      ? 'different vehicle cards'
      : otherLoad !== true && differs(({ load }) => load)
        ? 'different loads'
        : otherLeave !== true && differs(({ leaveAt }) => leaveAt)
          ? 'different leave times'
          : differs(({ route }) => [route.segments, route.positions])
            ? 'different drives'
            : undefined;
  return (
    what &&
    `These two checks are of ${what}: what the map changed cannot be told from that. Check again with the same.`
  );
}

/** Both reports' findings laid along the newer drive, what is off the map apart. */
interface Sides {
  readonly was: readonly Item[];
  readonly now: readonly Item[];
  readonly wasOff: readonly Item[];
  readonly nowOff: readonly Item[];
  /** ways driven on the older map */
  readonly driven: ReadonlySet<number>;
  /** the newer map may lack roads or limits anywhere */
  readonly incomplete: boolean;
}

function sidesOf({ was, now }: ToCompare, newer: (m: number) => number): Sides {
  const [older, items] = [itemsOf(was, newer), itemsOf(now, (m) => m)];
  return {
    was: older.filter(({ finding }) => !isOffMap(finding)),
    now: items.filter(({ finding }) => !isOffMap(finding)),
    wasOff: older.filter(({ finding }) => isOffMap(finding)),
    nowOff: items.filter(({ finding }) => isOffMap(finding)),
    driven: new Set(was.roads.map(({ way }) => way)),
    incomplete: now.findings.some(({ kind }) => kind === 'incomplete'),
  };
}

function changed(was: Item, now: Item, units: Units): Difference[] {
  if (sameMeaning(was.finding, now.finding) || (was.finding.folded && now.finding.folded)) return [];
  const closed = lacksData(was.finding) && !lacksData(now.finding);
  // what the firm measured itself nobody mapped
  const mapped = closed && now.finding.note === undefined;
  return [
    {
      kind: mapped ? 'now mapped' : 'changed',
      finding: now.finding.id,
      was: was.finding,
      now: now.finding,
      ...now.span,
      say: closed ? sayClosed(was.finding, now.finding, units) : sayChanged(was.finding, now.finding, units),
    },
  ];
}

function lost(
  item: Item,
  sides: Sides,
  { units, setBack, isMapped = () => true }: ToCompare & { readonly setBack: boolean },
): Difference[] {
  const { finding, span } = item;
  if (finding.folded || isSaid(item, sides.now)) return [];
  if (finding.kind !== 'incomplete' && (sides.incomplete || isHidden(item, sides))) return [];
  // the road it is driven on says nothing about what stood there
  const stood = finding.osm.filter(({ type, id }) => type !== 'way' || !sides.driven.has(id));
  const settled = lacksData(finding) && stood.every(isMapped);
  return [
    {
      kind: settled ? 'now mapped' : 'gone',
      finding: finding.id,
      was: finding,
      ...span,
      say: settled ? sayClosed(finding, undefined, units) : sayGone(finding, { units, setBack }),
    },
  ];
}

function added(item: Item, sides: Sides, { units }: ToCompare): Difference[] {
  const { finding, span } = item;
  if (finding.folded || isSaid(item, sides.was)) return [];
  const before = finding.note === undefined ? sides.wasOff.find((off) => liesIn(span, off.span)) : undefined;
  return [
    {
      kind: before === undefined ? 'new' : 'now mapped',
      finding: finding.id,
      ...given({ was: before?.finding }),
      now: finding,
      ...span,
      say: before === undefined ? sayNew(finding, units) : sayClosed(before.finding, finding, units),
    },
  ];
}

/** Whether the other report says the same along all of it, in other pieces. */
function isSaid({ finding, span }: Item, others: readonly Item[]): boolean {
  if (lengthM(span) <= ONE_PLACE_M) return false;
  const same = others.filter((other) => sameMeaning(finding, other.finding)).map((other) => other.span);
  return uncovered(span, same).every((part) => lengthM(part) <= ONE_PLACE_M);
}

function isHidden({ span }: Item, { nowOff }: Sides): boolean {
  return nowOff.some((off) => liesIn(span, off.span));
}

/** At least half of it, or the place itself. */
function liesIn(span: Span, off: Span): boolean {
  return sharedM(span, off) >= lengthM(span) / 2;
}

/** Parts of the drive that one of the maps alone has roads for. */
function offTheMap(sides: Sides, units: Units): Difference[] {
  const newlyOff = partsOff(sides.nowOff, sides.wasOff).map(({ finding, span }): Difference => {
    const hidden = sides.was.filter((item) => !item.finding.folded && liesIn(item.span, span)).length;
    return {
      kind: 'new',
      finding: finding.id,
      now: finding,
      ...span,
      say: sayOffTheMap(span, hidden, units),
    };
  });
  const mapped = partsOff(sides.wasOff, sides.nowOff).map(
    ({ finding, span }): Difference => ({
      kind: 'now mapped',
      finding: finding.id,
      was: finding,
      ...span,
      say: sayRoadMapped(span, units),
    }),
  );
  return [...newlyOff, ...mapped];
}

/** What is off the one map and not off the other. */
function partsOff(off: readonly Item[], other: readonly Item[]): Item[] {
  const others = other.map(({ span }) => span);
  return off
    .filter(({ finding }) => !finding.folded)
    .flatMap(({ finding, span }) => uncovered(span, others).map((part) => ({ finding, span: part })))
    .filter(({ span }) => lengthM(span) > ONE_PLACE_M);
}
