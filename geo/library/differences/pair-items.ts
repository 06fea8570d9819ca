import { distanceM } from '../../earth/sphere.ts';
import { type Item, lengthM, sharedM } from './item.ts';
import { sameFigure } from './meaning.ts';

/** Two mappers put one thing this far apart; so do two drawings of one road. Metres. */
export const ONE_PLACE_M = 25;
/** Further apart along the drive it is another pass of the same place. Metres. */
const ONE_PASS_M = 250;

export interface Paired {
  readonly pairs: readonly (readonly [was: Item, now: Item])[];
  /** in the older report alone */
  readonly gone: readonly Item[];
  /** in the newer report alone */
  readonly fresh: readonly Item[];
}

/**
 * Which finding of the newer report is the same thing as one of the older: first those of one kind about the same
 * mapped objects, then those of one kind at one place, then those of one subject at one place. Each at most once.
 */
export function pairItems(was: readonly Item[], now: readonly Item[]): Paired {
  const pairs: [Item, Item][] = [];
  const [olderLeft, newerLeft] = [new Set(was), new Set(now)];
  for (const mayPair of ROUNDS)
    for (const [older, newer] of likeliestFirst(olderLeft, newerLeft, mayPair)) {
      if (!olderLeft.has(older) || !newerLeft.has(newer)) continue;
      pairs.push([older, newer]);
      olderLeft.delete(older);
      newerLeft.delete(newer);
    }
  return { pairs, gone: [...olderLeft], fresh: [...newerLeft] };
}

const ROUNDS: readonly ((was: Item, now: Item) => boolean)[] = [
  (was, now) => sameKind(was, now) && sameObjects(was, now) && sharedM(was.span, now.span) > -ONE_PASS_M,
  (was, now) => sameKind(was, now) && atOnePlace(was, now),
  // what the map itself lacks is never the same thing in another form
  (was, now) => was.finding.subject !== 'map' && atOnePlace(was, now),
];

function likeliestFirst(
  was: Iterable<Item>,
  now: Iterable<Item>,
  mayPair: (was: Item, now: Item) => boolean,
): (readonly [Item, Item])[] {
  const bySubject = new Map<string, Item[]>();
  for (const item of now) {
    const { subject } = item.finding;
    const known = bySubject.get(subject);
    if (known === undefined) bySubject.set(subject, [item]);
    else known.push(item);
  }
  const found: { readonly pair: readonly [Item, Item]; readonly rank: readonly number[] }[] = [];
  for (const older of was)
    for (const newer of bySubject.get(older.finding.subject) ?? [])
      if (mayPair(older, newer)) found.push({ pair: [older, newer], rank: rankOf(older, newer) });
  return found.sort((a, b) => compare(a.rank, b.rank)).map(({ pair }) => pair);
}

/** The less the likelier, the first number before the others. */
function rankOf(was: Item, now: Item): readonly number[] {
  return [
    sharesObject(was, now) ? 0 : 1,
    sameFigure(was.finding, now.finding) ? 0 : 1,
    -Math.min(sharedM(was.span, now.span), ONE_PLACE_M),
    Math.abs(was.span.fromM - now.span.fromM),
    apartM(was, now),
  ];
}

function compare(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, i) => value !== b[i]);
  return at < 0 ? 0 : a[at]! - b[at]!;
}

function sameKind(was: Item, now: Item): boolean {
  return was.finding.kind === now.finding.kind;
}

function objectKeys({ finding }: Item): string[] {
  return finding.osm.map(({ type, id }) => `${type}${id}`).sort();
}

function sameObjects(was: Item, now: Item): boolean {
  return was.finding.osm.length > 0 && objectKeys(was).join() === objectKeys(now).join();
}

function sharesObject(was: Item, now: Item): boolean {
  return was.finding.osm.some(({ type, id }) =>
    now.finding.osm.some((other) => other.type === type && other.id === id),
  );
}

/** By place on the same pass of the same road; two that reach far lie together over half of the shorter at least. */
function atOnePlace(was: Item, now: Item): boolean {
  if (!sharesObject(was, now) && !mayBeOneRoad(was.finding.road, now.finding.road)) return false;
  const shared = sharedM(was.span, now.span);
  if (shared > -ONE_PASS_M && apartM(was, now) <= ONE_PLACE_M) return true;
  const shorterM = Math.min(lengthM(was.span), lengthM(now.span));
  return shorterM > ONE_PLACE_M ? shared >= shorterM / 2 : shared > -ONE_PLACE_M;
}

function apartM({ finding: { at: a } }: Item, { finding: { at: b } }: Item): number {
  return distanceM(a.lat, a.lon, b.lat, b.lon);
}

/** A road without a name may have been given one since. */
function mayBeOneRoad(was: string | undefined, now: string | undefined): boolean {
  return was === undefined || now === undefined || was === now;
}
